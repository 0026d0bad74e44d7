import { EVIDENCE_CAUTION, EVIDENCE_WORDS, momentWords } from '../../words/contest-words.js'
import { figureText, type PlaceRow, placeText, type StandingsReport } from './standings-report.js'

const HEADS = ['place', 'player', 'figure', 'score', 'games', 'handicap', 'marks'] as const

function rowsOf(report: StandingsReport): string[][] {
  return report.places.map((row) => [
    placeText(row),
    row.player,
    figureText(report, row),
    String(row.score),
    row.games.join(' '),
    row.handicap === 0 ? '' : `+${row.handicap}`,
    [...row.marks, ...(row.aheadBy === null ? [] : [`ahead by ${row.aheadBy}`])].join('; '),
  ])
}

const headsOf = ({ rankingWords }: StandingsReport): string[] =>
  HEADS.map((head) => (head === 'figure' ? rankingWords : head))

/** The table for a terminal, and who has no place and why. */
export function standingsLines(report: StandingsReport): string[] {
  const table = [headsOf(report), ...rowsOf(report)]
  const widths = HEADS.map((_, column) => Math.max(...table.map((row) => row[column]!.length)))
  const isFigure = (column: number): boolean => column === 2 || column === 3 || column === 5
  const line = (row: readonly string[]): string =>
    row
      .map((cell, column) => (isFigure(column) ? cell.padStart(widths[column]!) : cell.padEnd(widths[column]!)))
      .join('  ')
      .trimEnd()
  return [
    report.title,
    `${report.lane}, over at ${momentWords(report.deadline)}`,
    '',
    ...(report.places.length === 0 ? ['No entry has a place.'] : table.map(line)),
    '',
    ...afterTable(report),
  ]
}

/** What stands under the table, everywhere. */
function afterTable(report: StandingsReport): string[] {
  return [
    report.why,
    ...(report.places.some(({ shared }) => shared)
      ? ['= marks a shared place: the difference is less than the frames can tell (1.64 standard errors), or none.']
      : []),
    ...(report.codesChecked ? [] : ['Nobody listed the entry codes, so names are taken at their word (--entrants).']),
    ...listed(
      'Without a place',
      report.unplaced.map(({ file, player, reasons }) => `${player || file} (${file}): ${reasons.join('; ')}`),
    ),
    ...listed(
      'Refused',
      report.refused.map(({ file, reasons }) => `${file}: ${reasons.join(' ')}`),
    ),
    ...evidenceLines(report),
  ]
}

const listed = (heading: string, rows: readonly string[]): string[] =>
  rows.length === 0 ? [] : ['', heading, ...rows.map((row) => `- ${row}`)]

function evidenceLines({ evidence }: StandingsReport): string[] {
  if (!evidence) return []
  return [
    '',
    'For the organiser: does anybody know too much?',
    EVIDENCE_CAUTION,
    ...evidence.flatMap(({ player, choices, tests }) => [
      `- ${player}, ${choices} first balls`,
      ...tests.map(
        ({ name, figure, p }) =>
          `  p ${p < 0.001 ? 'below 0.001' : p.toFixed(3)}: ${EVIDENCE_WORDS[name]}: ${figure.toFixed(2)}`,
      ),
    ]),
  ]
}

/** The same as Markdown. */
export function standingsMarkdown(report: StandingsReport): string[] {
  const cell = (text: string): string => text.replaceAll('\\', '\\\\').replaceAll('|', '\\|').replaceAll('<', '&lt;')
  const line = (row: readonly string[]): string => `| ${row.map(cell).join(' | ')} |`
  return [
    `# ${cell(report.title)}`,
    '',
    `${cell(report.lane)}, over at ${momentWords(report.deadline)}`,
    '',
    line(headsOf(report)),
    line(HEADS.map((_, column) => (column === 2 || column === 3 || column === 5 ? '--:' : '---'))),
    ...rowsOf(report).map(line),
    '',
    ...afterTable(report).map(cell),
  ]
}

/** A line an entry (RFC 4180); a text that a spreadsheet would take for a formula is set off by an apostrophe. */
export function standingsCsv(report: StandingsReport): string[] {
  const field = (value: string | number): string => {
    const text = typeof value === 'string' && /^[=+@\t-]/.test(value) ? `'${value}` : String(value)
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
  }
  const heads = [
    'place',
    'shared',
    'player',
    'figure',
    'score',
    'handicap',
    'without luck',
    'cost',
    'strikes',
    'games',
    'marks',
    'file',
  ]
  const row = (one: PlaceRow): (string | number)[] => [
    one.place,
    one.shared ? 'yes' : 'no',
    one.player,
    one.figure,
    one.score,
    one.handicap,
    one.withoutLuck ?? '',
    one.cost ?? '',
    one.strikes,
    one.games.join(' '),
    one.marks.join('; '),
    one.file,
  ]
  const without = [
    ...report.unplaced.map(({ file, player, reasons }) => [
      '',
      '',
      player,
      '',
      '',
      '',
      '',
      '',
      '',
      '',
      reasons.join('; '),
      file,
    ]),
    ...report.refused.map(({ file, player, reasons }) => [
      '',
      '',
      player,
      '',
      '',
      '',
      '',
      '',
      '',
      '',
      `refused: ${reasons.join(' ')}`,
      file,
    ]),
  ]
  return [heads, ...report.places.map(row), ...without].map((fields) => fields.map(field).join(','))
}
