import { useLayoutEffect } from 'react'
import type { Painter } from './painter.js'

interface PaintedRowsProps {
  readonly painter: Pick<Painter, 'show'>
  readonly rows: readonly string[]
}

/** A screen of finished rows, handed to the painter as they are; Ink itself has nothing to draw then. */
export function PaintedRows({ painter, rows }: PaintedRowsProps): null {
  useLayoutEffect(() => painter.show(rows), [painter, rows])
  return null
}
