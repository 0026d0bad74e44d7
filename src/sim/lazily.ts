/** Makes something when it is first asked for, and keeps it; what it was made from is let go. */
export function lazily<T>(make: () => T): () => T {
  let state: { readonly make: () => T } | { readonly made: T } = { make }
  return () => {
    if ('make' in state) state = { made: state.make() }
    return state.made
  }
}
