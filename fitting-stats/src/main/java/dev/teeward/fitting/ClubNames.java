package dev.teeward.fitting;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/** Refuses names of clubs that a reader cannot tell apart. */
final class ClubNames {
    private ClubNames() {}

    /** In shots and descriptions alike. */
    static void requireDistinct(Session session) {
        Set<String> names = new LinkedHashSet<>(session.shots().clubs());
        names.addAll(session.clubs().keySet());
        Map<String, String> seen = new HashMap<>();
        for (String name : names) {
            String before = seen.putIfAbsent(VisibleText.key(name), name);
            if (before != null) {
                throw new IllegalArgumentException("the club \"" + VisibleText.line(name) + "\" differs from \""
                        + VisibleText.line(before) + "\" only in " + VisibleText.difference(before, name)
                        + "; write it in one way");
            }
        }
    }
}
