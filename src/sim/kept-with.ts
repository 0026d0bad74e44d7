/**
 * A function of an owner and something asked of it that works each answer out once and keeps it with the owner, as long
 * as the owner lives.
 * @param keyOf tells apart what may be asked
 */
export function keptWith<Owner extends object, Asked, Answer>(
  keyOf: (asked: Asked) => string | number,
  answer: (owner: Owner, asked: Asked) => Answer,
): (owner: Owner, asked: Asked) => Answer {
  const kept = new WeakMap<Owner, Map<string | number, Answer>>()
  return (owner, asked) => {
    const ofOwner = kept.get(owner) ?? new Map<string | number, Answer>()
    kept.set(owner, ofOwner)
    const key = keyOf(asked)
    const known = ofOwner.get(key)
    if (known !== undefined) return known
    const made = answer(owner, asked)
    ofOwner.set(key, made)
    return made
  }
}
