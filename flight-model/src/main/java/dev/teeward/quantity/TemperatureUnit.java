package dev.teeward.quantity;

/**
 * The units of temperature. They differ in zero as well as in size: K = degC + 273.15, K = (degF + 459.67) 5/9.
 *
 * <p>They convert temperatures, never differences of temperatures. Near 0 degC or 0 degF the round trip is exact to 2 ulp
 * of the value in kelvins, not of the small number. Source: the SI Brochure, 9th edition, 2019; NIST Special
 * Publication 811, 2008. Immutable and thread-safe.
 */
public enum TemperatureUnit implements Unit {
    /** The kelvin [K], the SI unit. */
    KELVIN("K", "k") {
        @Override
        public double toSi(double value) {
            return value;
        }

        @Override
        public double fromSi(double si) {
            return si;
        }
    },

    /** The degree Celsius [degC]. */
    CELSIUS("degC", "c") {
        @Override
        public double toSi(double value) {
            return value + 273.15;
        }

        @Override
        public double fromSi(double si) {
            return si - 273.15;
        }
    },

    /** The degree Fahrenheit [degF]. */
    FAHRENHEIT("degF", "f") {
        @Override
        public double toSi(double value) {
            return (value + 459.67) * 5.0 / 9.0;
        }

        @Override
        public double fromSi(double si) {
            return si * 9.0 / 5.0 - 459.67;
        }
    };

    private final String symbol;
    private final String suffix;

    TemperatureUnit(String symbol, String suffix) {
        this.symbol = symbol;
        this.suffix = suffix;
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public String suffix() {
        return suffix;
    }

    @Override
    public TemperatureUnit siUnit() {
        return KELVIN;
    }
}
