package dev.teeward.fitting;

/** What a golfer can rate about a shot, from 1 (poor) to 5 (excellent). */
public enum Rating {
    /** How the strike felt. */
    FEEL,

    /** How the strike sounded. */
    SOUND,

    /** How the club looked behind the ball. */
    LOOK
}
