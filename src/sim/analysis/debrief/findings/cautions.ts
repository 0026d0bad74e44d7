/** Said once wherever findings advise on throwing. */
export const CAUTIONS: readonly string[] = [
  'These are findings about choices in a simulation, not lessons in throwing; a certified coach sees what no program can, and the rules of your centre come first.',
  'Bowling loads hand, wrist, elbow, shoulder, back and knees: warm up, add throws slowly, use a ball whose weight and fit have been checked, and stop at pain.',
]
