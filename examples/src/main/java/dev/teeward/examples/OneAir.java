package dev.teeward.examples;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** One air for all shots, on the command line; the option is that of {@code altitude}. */
final class OneAir {
    @Option(
            names = "--elevation",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description =
                    "Bring every shot into calm standard air at this elevation first, in ft, or in m with --units metric:"
                            + " for clubs that were hit in different air. Each counts as it was hit if not given.")
    private @Nullable Double elevation;

    /** The air, or an {@link IllegalArgumentException} that says what is wrong. */
    Optional<SameAir> air(UnitSystem units) {
        return elevation == null
                ? Optional.empty()
                : Optional.of(SameAir.standardAt(Length.of(elevation, unit(units))));
    }

    /** The unit in which elevations are typed. */
    static LengthUnit unit(UnitSystem units) {
        return units == UnitSystem.US ? LengthUnit.FOOT : LengthUnit.METER;
    }
}
