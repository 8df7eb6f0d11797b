package dev.teeward.fitting.linear;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.fitting.reference.Evaluators;
import dev.teeward.fitting.reference.ReferenceTable;
import dev.teeward.fitting.reference.ReferenceTable.Row;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Linear and mixed models against NIST StRD, R (lm, sandwich, car, lmerTest) and statsmodels. */
public class LinearReferenceTest {
    private static final Evaluators ROWS = rows();

    /** The rows checked here. */
    public static Set<String> coveredKeys() {
        return ROWS.keys();
    }

    @TestFactory
    Stream<DynamicTest> rowsAreMet() {
        return ROWS.tests();
    }

    @Test
    void coversTheStatedRows() {
        assertEquals(183, coveredKeys().size());
    }

    private static Evaluators rows() {
        Evaluators map = new Evaluators();
        longley(map);
        anorexia(map);
        cars(map);
        blocks(map);
        decomposition(map);
        anova(map);
        return map;
    }

    private static double error(LinearFit fit, int column) {
        return fit.coefficients().get(column).standardError().orElseThrow();
    }

    private static int last(Row row) {
        return row.quantity().charAt(row.quantity().length() - 1) - '0';
    }

    private static void longley(Evaluators map) {
        Design design = Design.of(16);
        for (int j = 1; j <= 6; j++) {
            design = design.withCovariate("x" + j, ReferenceTable.column("strd_longley", "x" + j));
        }
        double[] y = ReferenceTable.column("strd_longley", "y");
        LinearFit fit = LinearModel.withDefaults().fit(design, y);
        LinearFit robust = LinearModel.withDefaults().withErrors(ErrorModel.HC3).fit(design, y);
        ToDoubleFunction<Row> plain = row -> switch (row.quantity().replaceAll("[0-9]", "")) {
            case "beta" -> fit.coefficients().get(last(row)).estimate().value();
            case "se" -> error(fit, last(row));
            case "residual_sd" -> fit.residualDeviation();
            case "r_squared" -> fit.determination();
            default -> Evaluators.unknown(row);
        };
        map.put("STRD-longley/1", plain);
        map.put("STRD-longley/2", plain);
        map.put("STRD-longley/3", plain);
        map.put("HC-longley/1", row -> error(robust, last(row)));
        map.put(
                "HC-longley/2",
                row -> fit.varianceInflation().values().stream()
                        .skip(last(row) - 1L)
                        .findFirst()
                        .orElseThrow());
        map.put("HC-longley/3", row -> error(robust, last(row)));
        map.correct(
                "HC-longley/1 se3",
                0.82213350201658,
                "R differs from exact rational arithmetic on the data (python3 fractions) by 6e-9 relative");
    }

    private static void anorexia(Evaluators map) {
        double[] y = ReferenceTable.column("r_anorexia", "Postwt");
        Design design = Design.of(y.length)
                .withCovariate("Prewt", ReferenceTable.column("r_anorexia", "Prewt"))
                .withFactor("Treat", "Cont", ReferenceTable.labels("r_anorexia", "Treat"));
        LinearFit fit = LinearModel.withDefaults().fit(design, y);
        List<String> names = List.of(Design.INTERCEPT, "Prewt", "Treat=CBT", "Treat=FT");
        for (int j = 0; j < 4; j++) {
            Coefficient c = fit.coefficient(names.get(j));
            map.put("ANCOVA-anorexia/" + (j + 1), row -> value(row, c));
        }
        List<Coefficient> means = fit.marginalMeans("Treat");
        List<String> levels = List.of("Cont", "CBT", "FT");
        for (int j = 0; j < 3; j++) {
            Coefficient c = means.stream()
                    .filter(m -> m.name().equals("Treat=" + levels.get(means.indexOf(m))))
                    .toList()
                    .get(j);
            map.put("ANCOVA-anorexia/" + (j + 5), row -> value(row, c));
        }
        ErrorModel[] models = {ErrorModel.HC0, ErrorModel.HC1, ErrorModel.HC2, ErrorModel.HC3, ErrorModel.HC4};
        List<String> inR = List.of("se_(Intercept)", "se_Prewt", "se_TreatCBT", "se_TreatFT");
        for (int m = 0; m < models.length; m++) {
            LinearFit robust = LinearModel.withDefaults().withErrors(models[m]).fit(design, y);
            map.put(
                    "HC-anorexia/" + (m + 1),
                    row -> robust.coefficient(names.get(inR.indexOf(row.quantity())))
                            .standardError()
                            .orElseThrow());
        }
    }

    private static double value(Row row, Coefficient c) {
        return switch (row.quantity()) {
            case "est", "emmean", "b_group2" -> c.estimate().value();
            case "se" -> c.standardError().orElseThrow();
            case "t" -> c.t().orElseThrow();
            case "p" -> c.pValue();
            case "df", "df_resid", "df_satterthwaite" -> c.degreesOfFreedom();
            case "lwr" -> c.estimate().interval().lower();
            case "upr" -> c.estimate().interval().upper();
            default -> Evaluators.unknown(row);
        };
    }

    private static void cars(Evaluators map) {
        double[] y = ReferenceTable.column("r_cars", "dist");
        Design design = Design.of(y.length).withCovariate("speed", ReferenceTable.column("r_cars", "speed"));
        ErrorModel[] models = {
            ErrorModel.CONSTANT,
            ErrorModel.HC0,
            ErrorModel.HC1,
            ErrorModel.HC2,
            ErrorModel.HC3,
            ErrorModel.HC4,
            ErrorModel.CONSTANT,
            ErrorModel.HC0,
            ErrorModel.HC1,
            ErrorModel.HC2,
            ErrorModel.HC3
        };
        for (int m = 0; m < models.length; m++) {
            LinearFit fit = LinearModel.withDefaults().withErrors(models[m]).fit(design, y);
            map.put("HC-cars/" + (m + 1), row -> switch (row.quantity()) {
                case "se_b0" -> error(fit, 0);
                case "se_b1" -> error(fit, 1);
                case "max_leverage" -> Arrays.stream(fit.leverages()).max().orElseThrow();
                case "max_cooks" -> Arrays.stream(fit.cooksDistances()).max().orElseThrow();
                case "max_abs_rstudent" ->
                    Arrays.stream(fit.studentizedResiduals())
                            .map(Math::abs)
                            .max()
                            .orElseThrow();
                case "DW" -> fit.durbinWatson().orElseThrow();
                case "BP_p" -> fit.breuschPaganP();
                default -> Evaluators.unknown(row);
            });
        }
    }

    private static void blocks(Evaluators map) {
        double[] u = ReferenceTable.column("synth_blocks", "u");
        double[] order = ReferenceTable.column("synth_blocks", "order");
        double[] c1 = ReferenceTable.column("synth_blocks", "c1");
        String[] block = ReferenceTable.labels("synth_blocks", "block");
        Design treatment =
                Design.of(20).withFactor("treatment", "A", ReferenceTable.labels("synth_blocks", "treatment"));
        Design blocked = treatment.withFactor("block", "1", block);
        List<Design> designs = List.of(
                treatment,
                blocked,
                blocked.withCovariate("order", order),
                treatment.withCovariate("c1", c1).withCentered("order", order));
        for (int d = 0; d < designs.size(); d++) {
            Coefficient plain =
                    LinearModel.withDefaults().fit(designs.get(d), u).coefficient("treatment=B");
            Coefficient robust = LinearModel.withDefaults()
                    .withErrors(ErrorModel.HC3)
                    .fit(designs.get(d), u)
                    .coefficient("treatment=B");
            map.put(
                    "LM-synth/" + (d + 1),
                    row -> row.quantity().equals("se_HC3")
                            ? robust.standardError().orElseThrow()
                            : value(row, plain));
        }
        RandomInterceptModel.Result mixed = RandomInterceptModel.withDefaults().fit(designs.get(3), block, u);
        map.put("LMM-synth/1", row -> switch (row.quantity()) {
            case "var_block" -> mixed.groupVariance();
            case "var_resid" -> mixed.residualVariance();
            default -> value(row, mixed.coefficient("treatment=B"));
        });
        Design sleep = Design.of(20).withFactor("group", "1", ReferenceTable.labels("r_sleep", "group"));
        RandomInterceptModel.Result drug = RandomInterceptModel.withDefaults()
                .fit(sleep, ReferenceTable.labels("r_sleep", "ID"), ReferenceTable.column("r_sleep", "extra"));
        map.put("LMM-sleep/1", row -> switch (row.quantity()) {
            case "var_ID" -> drug.groupVariance();
            case "var_resid" -> drug.residualVariance();
            case "reml_criterion" -> drug.criterion().orElseThrow();
            default -> value(row, drug.coefficient("group=2"));
        });
    }

    private static void decomposition(Evaluators map) {
        Map<String, double[]> x = new LinkedHashMap<>();
        x.put("wt", ReferenceTable.column("r_mtcars4", "wt"));
        x.put("hp", ReferenceTable.column("r_mtcars4", "hp"));
        String[] am = ReferenceTable.labels("r_mtcars4", "am");
        double[] mpg = ReferenceTable.column("r_mtcars4", "mpg");
        MeanDecomposition split = MeanDecomposition.withDefaults();
        MeanDecomposition.Result r = split.decompose("0", am, x, mpg);
        MeanDecomposition.Threefold three = r.threefold().orElseThrow();
        double all = r.difference().estimate().value();
        map.put(
                "OAX-mtcars/1",
                all,
                three.endowments().get("wt"),
                three.endowments().get("hp"),
                three.endowments().get("wt") + three.endowments().get("hp"),
                three.coefficients(),
                three.interaction());
        map.put(
                "OAX-mtcars/2",
                r.explained().get("wt").estimate().value(),
                r.explained().get("hp").estimate().value(),
                r.direct().estimate().value());
        map.put(
                "OAX-mtcars/3",
                all - coefficientBeside(x, "wt", am, mpg),
                all - coefficientBeside(x, "hp", am, mpg),
                r.shapley().get("wt"),
                r.shapley().get("hp"));
    }

    private static double coefficientBeside(Map<String, double[]> x, String name, String[] club, double[] y) {
        Design design = Design.of(y.length).withFactor("am", "0", club).withCovariate(name, x.get(name));
        return LinearModel.withDefaults()
                .fit(design, y)
                .coefficient("am=1")
                .estimate()
                .value();
    }

    private static void anova(Evaluators map) {
        double[][] plants = Stream.of("ctrl", "trt1", "trt2")
                .map(g -> ReferenceTable.column("r_plantgrowth", "weight", "group", g))
                .toArray(double[][]::new);
        double[][] resistors = IntStream.rangeClosed(1, 3)
                .mapToObj(g -> ReferenceTable.column("nist_resistors", "y", "group", String.valueOf(g)))
                .toArray(double[][]::new);
        OneWayAnova common = OneWayAnova.withDefaults().withCommonVariance(true);
        map.put("ANOVA-plant/1", row -> value(row, common.test(plants)));
        map.put("ANOVA-plant/2", row -> value(row, OneWayAnova.withDefaults().test(plants)));
        map.put("ANOVA-resist/1", row -> value(row, common.test(resistors)));
        map.put("ANOVA-resist/2", row -> value(row, common.test(resistors)));
    }

    private static double value(Row row, OneWayAnova.Result r) {
        return switch (row.quantity()) {
            case "F" -> r.f().orElseThrow();
            case "p" -> r.pValue();
            case "MSE" -> r.withinSquares() / r.withinDegreesOfFreedom();
            case "df1" -> r.betweenDegreesOfFreedom();
            case "df2" -> r.withinDegreesOfFreedom();
            case "SS_t" -> r.betweenSquares();
            case "SS_e" -> r.withinSquares();
            default -> Evaluators.unknown(row);
        };
    }
}
