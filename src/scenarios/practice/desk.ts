import { type Answered, type Learner, learnerFrom, normsOf, profileOf } from '../../sim/analysis/practice/learner.js'
import type { Answer, Kind, Position } from '../../sim/analysis/practice/position.js'
import type { SkillEstimate } from '../../sim/analysis/practice/profile.js'
import {
  answeredOn,
  beginPractice,
  drawnOn,
  type Session,
  type SessionMinutes,
} from '../../sim/analysis/practice/session.js'
import { type RandomSource, stream } from '../../sim/random.js'
import { localTime } from '../files/text/local-time.js'
import { dayOf } from './day.js'
import { askedAnew, type OpenPosition, openPosition } from './open-position.js'
import { isOfToday, readyPositions } from './position-set.js'
import type { PositionSet } from './positions-text.js'
import { keepAnswer, type PracticeLog, practiceLogPath, readPracticeLog } from './practice-log.js'

/** What a session is asked for with. */
export interface Wanted {
  readonly data: string
  readonly player: string | undefined
  readonly minutes: SessionMinutes
  /** Only positions answered so; all where null. */
  readonly kinds: readonly Kind[] | null
  readonly now: Date
}

/** A session with where it is kept. */
export interface Desk {
  readonly session: Session
  readonly path: string
  readonly player: string | undefined
  /** Whether the ready positions were made with an earlier model, so that each is asked anew. */
  readonly isEarlier: boolean
}

/** A learner and a session on the ready positions. @throws ScenarioError where the log is no such log */
export async function sitDown({ data, player, minutes, kinds, now }: Wanted): Promise<Desk> {
  const path = practiceLogPath(data, player)
  const [set, log] = await Promise.all([readyPositions(), readPracticeLog(path)])
  const learner = learnerFrom(log.answers)
  const day = dayOf(localTime(now))
  const session = beginPractice(
    { store: set.positions, perGame: set.perGame },
    learner,
    day,
    { minutes, kinds },
    drawsFor(learner, day, -1),
  )
  return { session, path, player, isEarlier: !(await isOfToday(set)) }
}

/** Draws of a session's choices: the same log on the same day is asked the same. */
const drawsFor = ({ answers }: Learner, day: number, place: number): RandomSource =>
  stream({ seed: `practice ${day} ${answers.length}`, game: 0, frame: place + 1, ball: 0, purpose: 'policy' })

/** The next position, opened; null where the session is over. */
export async function nextOpen(
  desk: Desk,
  anew: (open: OpenPosition) => Promise<Position | null> = askedAnew,
): Promise<{ readonly desk: Desk; readonly open: OpenPosition } | null> {
  let { session } = desk
  for (;;) {
    const drawn = drawnOn(session, drawsFor(session.before, session.day, session.drawn.length))
    if (!drawn) return null
    if (!desk.isEarlier) return { desk: { ...desk, session: drawn.session }, open: await openPosition(drawn.position) }
    const open = await openedAnew(drawn.position, anew)
    if (open) return { desk: { ...desk, session: drawn.session }, open }
    // Nothing is left to decide there under today's model: it does not count, and another is drawn in its place.
    const { drawn: all, store } = drawn.session
    session = { ...drawn.session, drawn: all.slice(0, -1), store: store.filter((one) => one !== drawn.position) }
  }
}

/** A position of an earlier model asked anew; null where its throws cannot be made any more, or nothing is left to ask. */
async function openedAnew(
  earlier: Position,
  anew: (open: OpenPosition) => Promise<Position | null>,
): Promise<OpenPosition | null> {
  try {
    const open = await openPosition(earlier)
    const position = open.state.spot ? await anew(open) : null
    return position && { ...open, position }
  } catch (fault) {
    if (fault instanceof RangeError) return null
    throw fault
  }
}

/** Whose answer it was, and what follows: kept on the disk before anything is told. @throws WriteError */
export async function answerAt(
  desk: Desk,
  open: OpenPosition,
  said: { readonly answer: Answer; readonly sureShare: number | null } | null,
  now: Date,
): Promise<{ readonly desk: Desk; readonly answered: Answered; readonly loss: ReturnType<typeof answeredOn>['loss'] }> {
  const { session, answered, loss } = answeredOn(desk.session, open.position, said)
  await keepAnswer(desk.path, { player: desk.player, answered, when: now })
  return { desk: { ...desk, session }, answered, loss }
}

/** What practice says of a player, for reports: skills by what they cost a game, dearest first. */
export function practiceProfile(log: PracticeLog, { positions, perGame }: PositionSet): SkillEstimate[] {
  return profileOf(learnerFrom(log.answers), normsOf(positions, perGame))
}
