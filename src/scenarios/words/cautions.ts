/** Said once wherever findings advise on throwing. */
export const CAUTIONS: readonly string[] = [
  'This is about choices on a simulated lane, not about how to throw. A certified coach sees what no program can, and the rules of your centre come first.',
  'Bowling loads hand, wrist, elbow, shoulder, back and knees: warm up, add throws slowly, use a ball whose weight and fit have been checked, and stop when something hurts.',
]
