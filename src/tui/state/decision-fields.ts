/** What of a throw is the player's to choose, in the order the panel shows it. */
export const DECISION_FIELDS = ['ball', 'feet', 'target', 'speed', 'release'] as const
export type DecisionField = (typeof DECISION_FIELDS)[number]
