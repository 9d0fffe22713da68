/** What a supply bears. */

/** A fuse blows for certain at this times its rating (common practice: 1.35 within minutes). */
export const FUSE_BLOWS_AT = 1.35;
