package dev.teeward;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.Architectures.LayeredArchitecture;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/** The arrows between the packages of both libraries, and the rules of the house that the compiler does not know. */
class ArchitectureTest {
    private static final JavaClasses LIBRARIES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .withImportOption(location -> !location.contains("/test-classes/") && !location.contains("-tests.jar"))
            .importPackages("dev.teeward.quantity", "dev.teeward.flight", "dev.teeward.fitting");

    /** Each package, and the packages that may use it. Whatever is not named here is refused below. */
    private static final List<Layer> LAYERS = List.of(
            new Layer("quantity", "dev.teeward.quantity"),
            new Layer("air", "dev.teeward.flight.air"),
            new Layer("aero", "dev.teeward.flight.aero"),
            new Layer("ground", "dev.teeward.flight.ground"),
            new Layer("flightInternal", "dev.teeward.flight.internal"),
            new Layer("flight", "dev.teeward.flight"),
            new Layer("impact", "dev.teeward.flight.impact"),
            new Layer("batch", "dev.teeward.flight.batch"),
            new Layer("study", "dev.teeward.flight.study"),
            new Layer("fitting", "dev.teeward.fitting"),
            new Layer("fittingInternal", "dev.teeward.fitting.internal"),
            new Layer("io", "dev.teeward.fitting.io"),
            new Layer("complete", "dev.teeward.fitting.complete"),
            new Layer("screen", "dev.teeward.fitting.screen"),
            new Layer("summary", "dev.teeward.fitting.summary"),
            new Layer("linear", "dev.teeward.fitting.linear"),
            new Layer("compare", "dev.teeward.fitting.compare"),
            new Layer("plan", "dev.teeward.fitting.plan"),
            new Layer("gapping", "dev.teeward.fitting.gapping"),
            new Layer("explain", "dev.teeward.fitting.explain"),
            new Layer("choose", "dev.teeward.fitting.choose"),
            new Layer("report", "dev.teeward.fitting.report"));

    private record Layer(String name, String packageName) {}

    @Test
    void arrowsRunOneWay() {
        LayeredArchitecture rule = layeredArchitecture().consideringOnlyDependenciesInLayers();
        for (Layer layer : LAYERS) {
            rule = rule.optionalLayer(layer.name()).definedBy(layer.packageName());
        }
        String[] overFlight = {
            "impact",
            "batch",
            "study",
            "fitting",
            "complete",
            "screen",
            "summary",
            "linear",
            "compare",
            "plan",
            "gapping",
            "explain",
            "choose",
            "report"
        };
        String[] sides = {"compare", "plan", "gapping", "explain", "choose", "report"};
        rule = rule.whereLayer("air")
                .mayOnlyBeAccessedByLayers(with(overFlight, "flightInternal", "flight"))
                .whereLayer("aero")
                .mayOnlyBeAccessedByLayers(with(overFlight, "flightInternal", "flight"))
                .whereLayer("ground")
                .mayOnlyBeAccessedByLayers(with(overFlight, "flightInternal", "flight"))
                .whereLayer("flightInternal")
                .mayOnlyBeAccessedByLayers("flight", "impact", "batch", "study")
                .whereLayer("flight")
                .mayOnlyBeAccessedByLayers(overFlight)
                .whereLayer("impact")
                .mayOnlyBeAccessedByLayers(
                        "study",
                        "complete",
                        "screen",
                        "summary",
                        "linear",
                        "compare",
                        "plan",
                        "gapping",
                        "explain",
                        "choose",
                        "report")
                .whereLayer("batch")
                .mayOnlyBeAccessedByLayers(
                        "study",
                        "complete",
                        "screen",
                        "summary",
                        "linear",
                        "compare",
                        "plan",
                        "gapping",
                        "explain",
                        "choose",
                        "report")
                .whereLayer("study")
                .mayOnlyBeAccessedByLayers(
                        "complete",
                        "screen",
                        "summary",
                        "linear",
                        "compare",
                        "plan",
                        "gapping",
                        "explain",
                        "choose",
                        "report")
                .whereLayer("fitting")
                .mayOnlyBeAccessedByLayers(
                        "io",
                        "complete",
                        "screen",
                        "summary",
                        "linear",
                        "compare",
                        "plan",
                        "gapping",
                        "explain",
                        "choose",
                        "report")
                .whereLayer("fittingInternal")
                .mayOnlyBeAccessedByLayers(
                        "complete",
                        "screen",
                        "summary",
                        "linear",
                        "compare",
                        "plan",
                        "gapping",
                        "explain",
                        "choose",
                        "report")
                .whereLayer("io")
                .mayOnlyBeAccessedByLayers("choose", "report")
                .whereLayer("complete")
                .mayOnlyBeAccessedByLayers(with(sides, "screen"))
                .whereLayer("screen")
                .mayOnlyBeAccessedByLayers(with(sides, "summary"))
                .whereLayer("summary")
                .mayOnlyBeAccessedByLayers(sides)
                .whereLayer("linear")
                .mayOnlyBeAccessedByLayers("compare", "plan", "gapping", "explain", "choose", "report")
                .whereLayer("compare")
                .mayOnlyBeAccessedByLayers("plan", "gapping", "explain", "choose", "report")
                .whereLayer("plan")
                .mayOnlyBeAccessedByLayers("explain", "choose", "report")
                .whereLayer("gapping")
                .mayOnlyBeAccessedByLayers("explain", "report")
                .whereLayer("explain")
                .mayOnlyBeAccessedByLayers("report")
                .whereLayer("choose")
                .mayOnlyBeAccessedByLayers("report")
                .whereLayer("report")
                .mayNotBeAccessedByAnyLayer();
        rule.check(LIBRARIES);
    }

    private static String[] with(String[] names, String... more) {
        return Stream.concat(Stream.of(names), Stream.of(more)).toArray(String[]::new);
    }

    @Test
    void everyPackageHasItsPlace() {
        Set<String> placed = new TreeSet<>();
        LAYERS.forEach(layer -> placed.add(layer.packageName()));
        Set<String> unplaced = new TreeSet<>();
        LIBRARIES.forEach(type -> unplaced.add(type.getPackageName()));
        assertTrue(unplaced.contains("dev.teeward.quantity") && unplaced.contains("dev.teeward.fitting.io"));
        unplaced.removeAll(placed);
        assertEquals(Set.of(), unplaced);
    }

    @Test
    void everyPackageIsNullMarked() {
        List<String> unmarked = new ArrayList<>();
        LIBRARIES.stream().map(JavaClass::getPackage).distinct().forEach(p -> {
            if (!nullMarked(p)) {
                unmarked.add(p.getName());
            }
        });
        assertEquals(List.of(), unmarked);
    }

    private static boolean nullMarked(JavaPackage p) {
        return p.isAnnotatedWith(NullMarked.class);
    }

    @Test
    void internalTypesStayOutOfPublicSignatures() {
        DescribedPredicate<JavaClass> internal = resideInAnyPackage("..internal..");
        List<String> leaks = new ArrayList<>();
        for (JavaClass type : LIBRARIES) {
            boolean open = type.getModifiers().contains(JavaModifier.PUBLIC) && !internal.test(type);
            if (!open) {
                continue;
            }
            type.getMembers().stream().filter(ArchitectureTest::visible).forEach(member -> {
                if (signature(member).anyMatch(internal)) {
                    leaks.add(member.getFullName());
                }
            });
            Stream.concat(type.getRawSuperclass().stream(), type.getRawInterfaces().stream())
                    .filter(internal)
                    .forEach(parent -> leaks.add(type.getName() + " extends " + parent.getName()));
        }
        assertEquals(List.of(), leaks);
    }

    private static boolean visible(JavaMember member) {
        return member.getModifiers().contains(JavaModifier.PUBLIC)
                || member.getModifiers().contains(JavaModifier.PROTECTED);
    }

    private static Stream<JavaClass> signature(JavaMember member) {
        if (member instanceof JavaField field) {
            return field.getType().getAllInvolvedRawTypes().stream();
        }
        JavaCodeUnit unit = (JavaCodeUnit) member;
        return Stream.concat(
                unit.getReturnType().getAllInvolvedRawTypes().stream(),
                unit.getParameterTypes().stream().flatMap(t -> t.getAllInvolvedRawTypes().stream()));
    }

    @Test
    void hipparchusStaysWhereItIsNeeded() {
        noClasses()
                .that()
                .resideOutsideOfPackages("dev.teeward.flight.study..", "dev.teeward.fitting.internal..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.hipparchus..")
                .check(LIBRARIES);
    }

    @Test
    void theCsvLibraryStaysInIo() {
        noClasses()
                .that()
                .resideOutsideOfPackage("dev.teeward.fitting.io")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("de.siegmar..")
                .check(LIBRARIES);
    }

    @Test
    void noWindowsNoLogs() {
        noClasses()
                .should()
                .dependOnClassesThat(
                        resideInAnyPackage("java.awt..", "javax.swing..", "java.beans..", "java.util.logging.."))
                .check(LIBRARIES);
        noClasses()
                .should()
                .dependOnClassesThat(resideInAPackage("org.slf4j.."))
                .check(LIBRARIES);
    }

    @Test
    void nothingIsPrinted() {
        noClasses().should().accessField(System.class, "out").check(LIBRARIES);
        noClasses().should().accessField(System.class, "err").check(LIBRARIES);
        noClasses()
                .should()
                .callMethodWhere(DescribedPredicate.describe(
                        "prints a stack trace", call -> call.getName().equals("printStackTrace")))
                .check(LIBRARIES);
    }

    @Test
    void namesReadWellFromKotlin() {
        methods()
                .that()
                .arePublic()
                .should()
                .haveNameNotMatching("in|is|as|when|fun|object|typealias|val|var")
                .check(LIBRARIES);
    }
}
