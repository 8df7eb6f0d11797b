package dev.teeward.fitting.report;

import java.util.AbstractMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * An unmodifiable map that is put together when it is first looked into, once.
 *
 * <p>Thread-safe if the supplier and its map are.
 */
final class LaterMap extends AbstractMap<String, @Nullable Object> {
    private final Supplier<Map<String, @Nullable Object>> supplier;
    private volatile @Nullable Map<String, @Nullable Object> made;

    LaterMap(Supplier<Map<String, @Nullable Object>> supplier) {
        this.supplier = supplier;
    }

    private synchronized Map<String, @Nullable Object> make() {
        Map<String, @Nullable Object> known = made;
        if (known == null) {
            known = supplier.get();
            made = known;
        }
        return known;
    }

    private Map<String, @Nullable Object> map() {
        Map<String, @Nullable Object> known = made;
        return known == null ? make() : known;
    }

    @Override
    public Set<Map.Entry<String, @Nullable Object>> entrySet() {
        return map().entrySet();
    }

    @Override
    public @Nullable Object get(@Nullable Object key) {
        return map().get(key);
    }

    @Override
    public boolean containsKey(@Nullable Object key) {
        return map().containsKey(key);
    }
}
