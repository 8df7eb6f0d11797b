package dev.teeward.fitting.report;

/**
 * One SVG element being drawn, {@value #WIDTH} units wide so that its text stays legible on the narrowest screens.
 *
 * <p>Title and description are in it, and it refers to both by ids that begin with {@code picture-} and the id of the picture.
 *
 * <p>Not thread-safe.
 */
final class SvgDrawing {
    static final double WIDTH = 360.0;

    private final MarkupWriter out = new MarkupWriter();
    private final String id;
    private final String title;
    private final String description;

    SvgDrawing(String id, String title, String description, double height) {
        this.id = id;
        this.title = title;
        this.description = description;
        String name = "picture-" + id;
        out.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "id",
                name,
                "role",
                "img",
                "aria-labelledby",
                name + "-title",
                "aria-describedby",
                name + "-desc",
                "viewBox",
                "0 0 " + Decimals.coordinate(WIDTH) + " " + Decimals.coordinate(height),
                "font-family",
                "system-ui, sans-serif",
                "font-size",
                "12",
                "fill",
                Palette.INK);
        out.element("title", title, "id", name + "-title");
        out.element("desc", description, "id", name + "-desc");
    }

    SvgDrawing group(String... attributes) {
        out.open("g", attributes);
        return this;
    }

    SvgDrawing end() {
        out.close();
        return this;
    }

    SvgDrawing line(double x1, double y1, double x2, double y2, String... attributes) {
        return shape("path", new String[] {"d", "M" + point(x1, y1) + "L" + point(x2, y2)}, attributes);
    }

    SvgDrawing path(String data, String... attributes) {
        return shape("path", new String[] {"d", data}, attributes);
    }

    /** A line through points. */
    SvgDrawing polyline(double[] x, double[] y, boolean closed, String... attributes) {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < x.length; i++) {
            data.append(i == 0 ? 'M' : 'L').append(point(x[i], y[i]));
        }
        return path(closed ? data.append('Z').toString() : data.toString(), attributes);
    }

    SvgDrawing rectangle(double x, double y, double width, double height, String... attributes) {
        return shape(
                "rect",
                new String[] {
                    "x", Decimals.coordinate(x),
                    "y", Decimals.coordinate(y),
                    "width", Decimals.coordinate(width),
                    "height", Decimals.coordinate(height)
                },
                attributes);
    }

    SvgDrawing circle(double x, double y, double radius, String... attributes) {
        return shape(
                "circle",
                new String[] {
                    "cx", Decimals.coordinate(x), "cy", Decimals.coordinate(y), "r", Decimals.coordinate(radius)
                },
                attributes);
    }

    /** Text whose start, middle or end stands at a point. */
    SvgDrawing text(double x, double y, String anchor, String text, String... attributes) {
        String[] all = new String[attributes.length + 6];
        System.arraycopy(
                new String[] {"x", Decimals.coordinate(x), "y", Decimals.coordinate(y), "text-anchor", anchor},
                0,
                all,
                0,
                6);
        System.arraycopy(attributes, 0, all, 6, attributes.length);
        out.element("text", text, all);
        return this;
    }

    private SvgDrawing shape(String element, String[] place, String... attributes) {
        String[] all = new String[place.length + attributes.length];
        System.arraycopy(place, 0, all, 0, place.length);
        System.arraycopy(attributes, 0, all, place.length, attributes.length);
        out.empty(element, all);
        return this;
    }

    static String point(double x, double y) {
        return Decimals.coordinate(x) + " " + Decimals.coordinate(y);
    }

    Picture finish() {
        return Picture.of(id, title, description, out.close().finish());
    }
}
