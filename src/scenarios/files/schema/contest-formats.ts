/** Formats of a contest's files. */
export const PACK_FORMAT = 'dryboard-contest-pack'
export const UNSEALING_FORMAT = 'dryboard-contest-unsealing'
export const PACK_VERSION = 1
