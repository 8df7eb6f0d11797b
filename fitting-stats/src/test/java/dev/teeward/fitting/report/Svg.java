package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Reads what was drawn, by the parser of the JDK. */
final class Svg {
    private static final Pattern PAIR = Pattern.compile("(-?[0-9.]+) (-?[0-9.]+)");

    private Svg() {}

    static Document parsePage(String page) {
        assertTrue(page.startsWith("<!DOCTYPE html>\n"));
        return parse(page.substring("<!DOCTYPE html>\n".length()));
    }

    static Document parse(String xml) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setExpandEntityReferences(false);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new AssertionError("not well-formed: " + e.getMessage(), e);
        }
    }

    static List<Element> all(Document document, String name) {
        NodeList found = document.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    static List<Element> withClass(Document document, String name, String cssClass) {
        return all(document, name).stream()
                .filter(e -> e.getAttribute("class").equals(cssClass))
                .toList();
    }

    static List<double[]> points(String path) {
        List<double[]> points = new ArrayList<>();
        Matcher matcher = PAIR.matcher(path);
        while (matcher.find()) {
            points.add(new double[] {Double.parseDouble(matcher.group(1)), Double.parseDouble(matcher.group(2))});
        }
        return points;
    }

    static void assertUniqueIds(Document document) {
        Set<String> seen = new HashSet<>();
        all(document, "*").forEach(e -> {
            if (e.hasAttribute("id")) {
                assertTrue(seen.add(e.getAttribute("id")), () -> "twice: " + e.getAttribute("id"));
            }
        });
        assertFalse(seen.isEmpty());
    }

    static void assertReferencesResolve(Document document) {
        Set<String> ids = new HashSet<>();
        all(document, "*").forEach(e -> ids.add(e.getAttribute("id")));
        int references = 0;
        for (Element e : all(document, "*")) {
            for (String name : new String[] {"aria-labelledby", "aria-describedby"}) {
                if (e.hasAttribute(name)) {
                    references++;
                    assertTrue(ids.contains(e.getAttribute(name)), e.getAttribute(name));
                }
            }
        }
        assertTrue(references > 0);
    }

    static void assertNoHandlers(Document document) {
        for (Element e : all(document, "*")) {
            for (int i = 0; i < e.getAttributes().getLength(); i++) {
                String name = e.getAttributes().item(i).getNodeName();
                assertFalse(name.startsWith("on"), name);
            }
        }
    }

    /** What every picture has to be. */
    static Document check(Picture picture) {
        String svg = picture.svg();
        Document document = parse(svg);
        Element root = document.getDocumentElement();
        assertEquals("svg", root.getTagName());
        assertEquals("img", root.getAttribute("role"));
        Element title = all(document, "title").get(0);
        Element desc = all(document, "desc").get(0);
        assertEquals(root.getAttribute("aria-labelledby"), title.getAttribute("id"));
        assertEquals(root.getAttribute("aria-describedby"), desc.getAttribute("id"));
        assertEquals(HostileText.asShown(picture.title()), title.getTextContent());
        assertEquals(HostileText.asShown(picture.description()), desc.getTextContent());
        assertFalse(desc.getTextContent().isBlank());
        assertUniqueIds(document);
        assertNoHandlers(document);
        assertFalse(svg.replace("http://www.w3.org/2000/svg", "").contains("://"), "an address");
        assertFalse(svg.contains("NaN") || svg.contains("Infinity"), "a number that is none");
        String[] box = root.getAttribute("viewBox").split(" ", -1);
        double width = Double.parseDouble(box[2]);
        double height = Double.parseDouble(box[3]);
        for (Element e : all(document, "path")) {
            for (double[] p : points(e.getAttribute("d"))) {
                assertTrue(
                        p[0] >= -1 && p[0] <= width + 1 && p[1] >= -1 && p[1] <= height + 1,
                        () -> picture.id() + " draws outside: " + p[0] + " " + p[1]);
            }
        }
        for (Element e : all(document, "text")) {
            double y = Double.parseDouble(e.getAttribute("y"));
            assertTrue(y > 0 && y <= height, () -> "text outside: " + e.getTextContent());
        }
        assertNotNull(root.getAttribute("viewBox"));
        return document;
    }
}
