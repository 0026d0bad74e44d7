import { createRequire } from 'node:module'

/** The part of the ODEX package's solver that the judges use. */
export interface OdexSolver {
  denseOutput: boolean
  absoluteTolerance: number
  relativeTolerance: number
  maxStepSize: number
  solve(
    slopes: (x: number, state: number[]) => number[],
    from: number,
    start: number[],
    to: number,
    onStep?: (
      step: number,
      from: number,
      to: number,
      state: number[],
      interpolate: (component: number, x: number) => number,
    ) => false | undefined,
  ): { readonly y: number[]; readonly xEnd: number }
}

/** Required, not imported: the package ships TypeScript sources that do not compile under strict settings. */
const odex = createRequire(import.meta.url)('odex') as { readonly Solver: new (equations: number) => OdexSolver }

/** A solver for so many equations that gives its state between steps too. */
export function odexSolver(equations: number, tolerance: number): OdexSolver {
  const solver = new odex.Solver(equations)
  solver.denseOutput = true
  solver.absoluteTolerance = tolerance
  solver.relativeTolerance = tolerance
  return solver
}
