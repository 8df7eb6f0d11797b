/**
 * Sessions and tables in files: CSV with the unit in the name of the column.
 *
 * <p>Start with {@link dev.teeward.fitting.io.SessionReader} and {@link dev.teeward.fitting.io.SessionWriter}; for tables
 * that are no sessions there are {@link dev.teeward.fitting.io.TableReader} and {@link dev.teeward.fitting.io.TableWriter}.
 *
 * <pre>{@code
 * Session session = SessionReader.withDefaults().read("""
 *     # hand: left
 *     # elevation: 5280 ft
 *     # temperature: 85 F
 *     # humidity: 20 %
 *     # wind: 8 mph from 30 deg
 *     # tolerance ball_speed: 0.5 mph
 *     # club Alder: loft 29 deg, lie 61.5 deg, length 37.5 in, mass 268 g, shaft graphite, regular
 *     club,shot,pair,exclude,note,feel,ball_speed_mph,launch_angle_deg,carry_yd
 *     Alder,1,1,,,4,117.8,17.1,165.2
 *     Rowan,2,1,topped,,1,80.3,4.0,
 *     """, "session.csv");
 * }</pre>
 *
 * <h2>The header block</h2>
 *
 * <p>Lines {@code # name: value} before the table, all optional: {@code hand}, {@code aim offset}, {@code ball},
 * {@code elevation}, {@code temperature}, {@code humidity}, {@code pressure} (ending in {@code station} or
 * {@code altimeter}), {@code wind} ({@code 8 mph from 30 deg}, or {@code calm}), {@code date}, {@code place},
 * {@code tolerance METRIC} (one standard deviation), {@code club NAME} (its build). Other names are kept; one that is nearly a
 * known one is refused. Sessions that were combined keep the air of each: {@code parts: 2} says how many there were, and
 * {@code part 2 temperature: 9 C} is a line of the second, {@code part 2: text} a remark of it.
 *
 * <h2>The table</h2>
 *
 * <p>A column is a metric and a unit, {@code ball_speed_mph}, or one of {@code club} (needed), {@code shot}, {@code pair},
 * {@code exclude} (a reason; empty means used), {@code note}, {@code feel}, {@code sound}, {@code look} (1 to 5),
 * {@code day}, {@code part} (of a combined session, from 1) and {@code intent} ({@code draw}, {@code straight} or
 * {@code fade}, as the golfer meant it); any other column is kept. An empty cell is no measurement. Rows are counted from 1 below the heading, without
 * blank lines. The separator is a comma, a semicolon or a tab, whichever the heading has most of; where it is not a comma,
 * numbers may have a decimal comma. A byte-order mark and any line ends are accepted; anything but UTF-8 is not. Names of clubs
 * that a reader cannot tell apart, by {@link dev.teeward.fitting.VisibleText#key}, are refused.
 *
 * <h2>Other tables</h2>
 *
 * <p>A {@link dev.teeward.fitting.io.ColumnMapping} says what the headings of somebody else's table mean:
 *
 * <pre>{@code
 * # heading = meaning
 * Iron       = club
 * Off face   = ball_speed km/h
 * Finish     = side yd sign R/L
 * Face       = face_angle deg negate
 * Carry note = other
 * }</pre>
 *
 * <p>Whatever is wrong with a file is said by {@link dev.teeward.fitting.io.InputException} in one line. Nothing here is null
 * unless marked.
 */
@NullMarked
package dev.teeward.fitting.io;

import org.jspecify.annotations.NullMarked;
