package oakum.portal.houserecord;

import java.util.Map;

/**
 * The record with other values, not saved.
 *
 * @param values every value by path, without results
 * @param changed the parts that differ
 */
public record Tried(Map<String, String> values, Map<PartKind, Record> changed) {}
