/** The one generator used of seedrandom; its published types cover only the package's entry point. */
declare module 'seedrandom/lib/alea.js' {
  /** A generator of numbers in [0, 1) with 32 random bits, seeded by the text. */
  export default function alea(seed: string): () => number
}
