package dev.teeward.flight.air;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The same bits on every Java virtual machine: of {@link Math}, only what the language specification makes exact. */
class AirDeterminismTest {
    private static final Set<String> EXACT = Set.of("sqrt", "abs", "min", "max", "fma");

    @Test
    void inexactFunctionsComeFromStrictMath() {
        JavaClasses classes = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages("dev.teeward.flight.air");
        noClasses()
                .should()
                .callMethodWhere(describe(
                        "a method of Math that may differ between virtual machines",
                        (JavaMethodCall call) -> call.getTargetOwner().isEquivalentTo(Math.class)
                                && !EXACT.contains(call.getTarget().getName())))
                .check(classes);
    }
}
