/** Names how lanes are drawn: a digest of the pictures of a short block. A test holds it against today's, and says what it is to be. */
export const LANE_FIGURES_REVISION = 'd5cf486614995b01'
