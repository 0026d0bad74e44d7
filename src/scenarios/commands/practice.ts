import { calibrationOf, learnerFrom } from '../../sim/analysis/practice/learner.js'
import type { Answer, Kind, Position } from '../../sim/analysis/practice/position.js'
import { endOf, isTest, type SessionMinutes, sessionLength, supportFor } from '../../sim/analysis/practice/session.js'
import { lazily } from '../../sim/lazily.js'
import { WriteError } from '../files/text/atomic-write.js'
import { EXIT, SIGNAL_EXIT } from '../files/text/exit-codes.js'
import { rounded } from '../files/text/json.js'
import { bagLines } from '../plain/opening-lines.js'
import { readPracticeAnswer, type TypedAnswer } from '../plain/read-practice-answer.js'
import { answerAt, type Desk, nextOpen, practiceProfile, sitDown } from '../practice/desk.js'
import type { OpenPosition } from '../practice/open-position.js'
import { askedAnew } from '../practice/open-position.js'
import { lookLines, questionLines } from '../practice/position-lines.js'
import { readyPositions } from '../practice/position-set.js'
import { practiceLogPath, readPracticeLog } from '../practice/practice-log.js'
import { toldLines } from '../practice/shown-lines.js'
import { dataFolder } from '../store/data-folder.js'
import { nameIfReadable } from '../store/player-name.js'
import {
  CARRY_OVER_LINE,
  calibrationLine,
  endLines,
  planLine,
  STANDING_LINES,
  sureAndWrong,
} from '../words/practice-session-words.js'
import { askWords, headWords, hintLine, SKILL_WORDS } from '../words/practice-words.js'
import { type CommandConsole, printText } from './console/console.js'
import { playShortBlock } from './short-block.js'

export interface PracticeOptions {
  readonly minutes: SessionMinutes
  readonly kind?: readonly Kind[]
  readonly data?: string
  readonly player?: string
  /** Prints what practice says of the player, and asks nothing. */
  readonly json?: boolean
}

/** A session of practice line by line; each answer is on the disk before it is told what it cost. */
export async function practiceCommand(options: PracticeOptions, console: CommandConsole): Promise<number> {
  const data = dataFolder(options.data, console.environment)
  const player = await nameIfReadable(options.player, console.environment, console.tell)
  if (options.json) return printProfile(data, player, console)
  let desk = await sitDown({ data, player, minutes: options.minutes, kinds: options.kind ?? null, now: new Date() })
  console.print(planLine(desk.session.plan))
  const standing = STANDING_LINES[desk.standing]
  if (standing !== '') console.tell(standing)
  console.print('Type ? for what you can say; quit stops without loss.')
  const typed = linesOf(console)
  let upcoming = nextOpen(desk, anewOn(console))
  let isStopped = false
  for (;;) {
    const next = await upcoming
    if (!next) break
    desk = {
      ...desk,
      session: { ...next.desk.session, learner: desk.session.learner, answered: desk.session.answered },
    }
    // The one after it is made ready while this one is thought about.
    const ahead = nextOpen(desk, anewOn(console))
    ahead.catch(() => {})
    upcoming = ahead
    const after = await askOne(desk, next.open, typed, console)
    if (!after) {
      isStopped = true
      break
    }
    desk = after
  }
  sayEnd(desk, console)
  if (!isStopped && desk.session.plan.hasShortBlock && !console.stoppedBy())
    await playShortBlock({ desk, data, typed }, console)
  await typed.return?.()
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

/** Lines once they are asked for: what is typed before anybody reads would be lost. */
function linesOf(console: CommandConsole): AsyncIterator<string> {
  const lines = lazily(() => console.lines()[Symbol.asyncIterator]())
  return {
    next: () => lines().next(),
    return: async () => (await lines().return?.()) ?? { done: true, value: undefined },
  }
}

const anewOn =
  (console: CommandConsole) =>
  async (open: OpenPosition): Promise<Position | null> => {
    console.hint('Asking a position anew')
    const position = await askedAnew(open)
    console.hint('')
    return position
  }

async function askOne(
  desk: Desk,
  open: OpenPosition,
  typed: AsyncIterator<string>,
  console: CommandConsole,
): Promise<Desk | null> {
  const { session } = desk
  const { position } = open
  const place = session.answered.length
  const isTested = isTest(session.plan, place)
  const support = supportFor(session, position)
  console.print('')
  console.print(
    `${place + 1} of ${sessionLength(session.plan)}. ${isTested ? 'Test, no grades. ' : ''}${headWords(position)}`,
  )
  for (const line of lookLines(open)) console.print(line)
  if (support === 'worked') {
    console.print(`First of its family, solved for you. ${askWords(position, open.scenario.setup.bowler.hand)}`)
    for (const line of toldLines(open, null, null)) console.print(line)
    console.print('Enter goes on.')
    for (;;) {
      const line = await typed.next()
      if (line.done || /^(q|quit)$/i.test(line.value.trim())) return null
      if (!line.value.trimStart().startsWith('#')) break
    }
    return keep(desk, open, null, console)
  }
  if (support === 'hint') console.print(hintLine(position))
  for (const line of questionLines(open)) console.print(line)
  const said = await readAnswer(open, typed, console)
  if (!said) return null
  return keep(desk, open, said, console)
}

async function readAnswer(
  open: OpenPosition,
  typed: AsyncIterator<string>,
  console: CommandConsole,
): Promise<{ answer: Answer; sureShare: number | null } | null> {
  for (;;) {
    const line = await typed.next()
    if (line.done) return null
    if (line.value.trimStart().startsWith('#')) continue
    const read: TypedAnswer = readPracticeAnswer(line.value, open.position)
    if (read.kind === 'quit') return null
    if (read.kind === 'answer') return read
    if (read.kind === 'bag') for (const one of bagLines(open.scenario.setup)) console.print(one)
    else if (read.kind === 'help') for (const one of HELP) console.print(one)
    else console.print(read.sentence)
  }
}

const HELP: readonly string[] = [
  'An answer as the question says. Your answer is kept as soon as it is given; quit (or q) stops without loss.',
  'bag names the balls. In a test nothing is told until the end. Costs are expected pins a game, held against',
  'the best from what was shown. For how to throw, ask a certified coach; on the lanes, the centre decides.',
]

async function keep(
  desk: Desk,
  open: OpenPosition,
  said: { answer: Answer; sureShare: number | null } | null,
  console: CommandConsole,
): Promise<Desk | null> {
  let kept: Awaited<ReturnType<typeof answerAt>>
  try {
    kept = await answerAt(desk, open, said, new Date())
  } catch (fault) {
    if (!(fault instanceof WriteError) || !console.interactive) throw fault
    console.print(`Not kept, so not counted: ${fault.reason}. Practice stops here.`)
    return null
  }
  if (said && kept.answered.mode === 'practice')
    for (const line of toldLines(open, said.answer, kept.loss)) console.print(line)
  if (kept.answered.mode === 'test') console.print('Kept.')
  return kept.desk
}

function sayEnd({ session }: Desk, console: CommandConsole): void {
  console.print('')
  const wrong = sureAndWrong(session.answered)[0]
  if (wrong)
    console.print(
      `Sure and wrong: ${SKILL_WORDS[wrong.skill]}, ${Math.round(100 * (wrong.sureShare ?? 0))} % sure, cost ${wrong.pins.toFixed(1)} pins.`,
    )
  for (const line of endLines(endOf(session))) console.print(line)
  const calibration = calibrationLine(calibrationOf(session.learner.answers))
  if (calibration !== '') console.print(calibration)
  console.print(CARRY_OVER_LINE)
}

async function printProfile(data: string, player: string | undefined, console: CommandConsole): Promise<number> {
  const [set, log] = await Promise.all([readyPositions(), readPracticeLog(practiceLogPath(data, player))])
  const skills = practiceProfile(log, set).map((one) => ({
    skill: one.skill,
    answers: one.answers,
    pinsAGame: rounded(one.pinsAGame, 2),
    lowAGame: rounded(one.lowAGame, 2),
    highAGame: rounded(one.highAGame, 2),
  }))
  const calibration = calibrationOf(learnerFrom(log.answers).answers)
  printText(
    console,
    JSON.stringify(
      {
        format: 'dryboard-practice-profile',
        version: 1,
        player: player ?? null,
        answers: log.answers.length,
        skills,
        calibration,
      },
      null,
      1,
    ),
  )
  return EXIT.fine
}
