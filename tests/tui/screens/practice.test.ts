import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { answerAt, type Desk, nextOpen, sitDown } from '../../../src/scenarios/practice/desk.js'
import { type OpenPosition, openPosition } from '../../../src/scenarios/practice/open-position.js'
import { readyPositions } from '../../../src/scenarios/practice/position-set.js'
import { lossOf } from '../../../src/sim/analysis/practice/scoring.js'
import { sessionLength } from '../../../src/sim/analysis/practice/session.js'
import { practiceScreen } from '../../../src/tui/screens/practice/practice-screen.js'
import { answerOf, draftFor } from '../../../src/tui/state/practice-draft.js'
import { openPractice, type PracticeState, practised, reducePractice } from '../../../src/tui/state/practice-state.js'
import { columnsOf } from '../../../src/tui/terminal/fit.js'
import { bare, THEMES } from '../fixtures.js'
import { SIZES } from './all-screens.js'

const NOW = new Date('2026-03-08T12:00:00Z')
let desk: Desk
/** One open position of every kind and skill, and of every way to vanish. */
const opened: OpenPosition[] = []

beforeAll(async () => {
  const data = mkdtempSync(join(tmpdir(), 'practice-screen-'))
  desk = await sitDown({ data, player: undefined, minutes: 20, kinds: null, now: NOW })
  const { positions } = await readyPositions()
  const keys = new Set<string>()
  for (const one of positions) {
    const key = one.kind === 'read' ? `${one.question} ${one.vanishesFeet}` : `${one.kind} ${one.skill}`
    if (keys.has(key)) continue
    keys.add(key)
    opened.push(await openPosition(one))
  }
}, 120_000)

const asking = (open: OpenPosition): PracticeState => ({
  ...openPractice(20),
  desk,
  open,
  stage: { kind: 'asking', draft: draftFor(open.position) },
})

/** Every stage a position goes through. */
function stagesOf(open: OpenPosition): PracticeState[] {
  const asked = asking(open)
  const draft = draftFor(open.position)
  const answer = answerOf(open.position, draft)
  const loss = lossOf(open.position, answer)
  return [
    asked,
    { ...asked, stage: { kind: 'sure', draft } },
    { ...asked, stage: { kind: 'told', said: { answer, sureShare: 0.7 }, loss } },
    { ...asked, stage: { kind: 'told', said: null, loss: null } },
  ]
}

describe('practice on the screen', () => {
  it('fits every size, in every theme, its question and its key line in sight', () => {
    for (const size of SIZES)
      for (const [, theme] of size.columns === 80 ? THEMES : THEMES.slice(0, 1))
        for (const open of opened)
          for (const practice of stagesOf(open)) {
            const rows = practiceScreen(practice, '', size, theme).map(bare)
            expect(rows).toHaveLength(size.rows)
            const name = `${open.position.id} ${practice.stage.kind} ${size.columns}x${size.rows}`
            for (const row of rows) expect(columnsOf(row), `${name}: ${row}`).toBeLessThanOrEqual(size.columns)
            expect(rows.at(-1), name).toMatch(/keys/)
            // Nothing is pushed off below: the last thing said stands on the screen.
            if (practice.stage.kind === 'asking' && open.position.kind === 'decide') {
              const last = open.position.answers.at(-1)!.decision.aim
              expect(rows.join('\n'), name).toContain(`target ${last.targetBoard}`)
            }
          }
  })

  it('tells nothing of a ball beyond where it vanished', () => {
    const hidden = opened.find(({ position }) => position.kind === 'read' && position.vanishesFeet === 15)
    if (!hidden) return
    const rows = practiceScreen(asking(hidden), '', { columns: 120, rows: 40 }, THEMES[3]![1]).map(bare).join('\n')
    expect(rows).toMatch(/\d at the arrows, then out of sight/)
  })

  it('shows the plan, the way to begin and the end', () => {
    const size = { columns: 80, rows: 24 }
    const theme = THEMES[3]![1]
    expect(practiceScreen(openPractice(), '', size, theme).map(bare).join('\n')).toMatch(/▸ 10 minutes/)
    const waiting: PracticeState = { ...openPractice(), desk, stage: { kind: 'opening' } }
    expect(practiceScreen(waiting, '', size, theme).map(bare).join('\n')).toMatch(/20 minutes, about 18 positions/)
    expect(
      practiceScreen({ ...waiting, stage: { kind: 'over' } }, '', size, theme)
        .map(bare)
        .join('\n'),
    ).toMatch(/The questions are over[\s\S]*Enter the short block/)
    const short = { ...desk, session: { ...desk.session, plan: { ...desk.session.plan, hasShortBlock: false } } }
    expect(
      practiceScreen({ ...waiting, desk: short, stage: { kind: 'over' } }, '', size, theme)
        .map(bare)
        .join('\n'),
    ).toMatch(/Practice is over[\s\S]*Enter home/)
  })
})

describe('practice by its keys', () => {
  it('keeps shares at a hundred, ranges in order and choices in a ring', () => {
    const read = opened.find(
      ({ position }) => position.kind === 'read' && (position.question === 'shape' || position.question === 'length'),
    )!
    let practice: PracticeState = asking(read)
    for (const key of ['up', 'up', 'right', 'up', 'down', 'down', 'left', 'down', 'right', 'right', 'up'] as const) {
      practice = reducePractice(practice, key)!
      const { stage } = practice
      if (stage.kind !== 'asking') throw new Error(stage.kind)
      expect(stage.draft.shares.reduce((sum, one) => sum + one, 0)).toBe(100)
      expect(Math.min(...stage.draft.shares)).toBeGreaterThanOrEqual(0)
    }
    const call = opened.find(({ position }) => position.kind === 'call')!
    let ranged: PracticeState = asking(call)
    for (let press = 0; press < 40; press++) ranged = reducePractice(ranged, 'up')!
    expect(ranged.stage.kind === 'asking' && ranged.stage.draft.low <= ranged.stage.draft.high).toBe(true)
  })

  it('asks how sure after a choice, and goes back to it', () => {
    const choice = opened.find(({ position }) => position.kind === 'decide')!
    const sure = reducePractice(asking(choice), 'enter')!
    expect(sure.stage.kind).toBe('sure')
    expect(reducePractice(sure, 'back')?.stage.kind).toBe('asking')
    const keeping = reducePractice(reducePractice(sure, 'right')!, 'enter')!
    expect(keeping.stage).toMatchObject({ kind: 'keeping', said: { sureShare: 0.8 } })
    expect(reducePractice(asking(choice), 'back')).toBeNull()
  })

  it('runs a whole session, each answer kept before it is told, and ends with its test', async () => {
    let practice: PracticeState = { ...openPractice(5), stage: { kind: 'opening' } }
    const data = mkdtempSync(join(tmpdir(), 'practice-run-'))
    practice = practised(practice, {
      kind: 'sat',
      desk: await sitDown({ data, player: undefined, minutes: 5, kinds: null, now: NOW }),
    })
    const length = sessionLength(practice.desk!.session.plan)
    for (let step = 0; practice.stage.kind !== 'over' && step < 200; step++) {
      if (practice.ahead === undefined) {
        const made = await nextOpen(practice.desk!)
        practice = practised(practice, { kind: 'made', desk: made?.desk ?? practice.desk!, open: made?.open ?? null })
      }
      if (practice.stage.kind === 'keeping') {
        const { desk: kept, loss } = await answerAt(practice.desk!, practice.open!, practice.stage.said, NOW)
        practice = practised(practice, { kind: 'kept', desk: kept, loss })
      } else if (practice.stage.kind !== 'opening') practice = reducePractice(practice, 'enter') ?? practice
      if (practice.stage.kind === 'over') break
    }
    const { answered, plan } = practice.desk!.session
    expect(practice.stage.kind).toBe('over')
    expect(answered).toHaveLength(length)
    expect(answered.slice(-plan.test).every(({ mode }) => mode === 'test')).toBe(true)
  })
})
