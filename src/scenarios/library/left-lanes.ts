import { clubBlock } from './block.js'
import { oilSheet } from './oil-sheet.js'
import { ANSA, BRONO, DARRO, GIRRO } from './people.js'

const LEFT = { level: '200', hand: 'left', style: 'tweener' } as const

export const leftHouse = () =>
  clubBlock({
    title: 'House oil from the other side',
    purpose:
      'A left-hander with a big hook on the house lane. Nobody else uses this side: how long does it stay as it is?',
    lanes: [{ name: 'lane 3', passes: oilSheet({ lengthFeet: 40, millilitres: 24, ratio: 9 }) }],
    bowler: { ...LEFT, style: 'cranker' },
    field: [ANSA, BRONO],
  })

export const leftFlat = () =>
  clubBlock({
    title: 'Two left-handers and a flat lane',
    purpose:
      'Girro hooks it hard from your side and has been at it for eight frames. Read his track before you choose yours.',
    lanes: [{ name: 'lane 10', passes: oilSheet({ lengthFeet: 43, millilitres: 26, ratio: 2.6, crown: [7, 14] }) }],
    bowler: LEFT,
    field: [GIRRO],
    fieldFramesBefore: 8,
  })

export const leaningOil = () =>
  clubBlock({
    title: 'A machine out of true',
    purpose: 'The middle of this oil is not the middle of the lane. Which side has the room: yours?',
    lanes: [
      { name: 'lane 10', passes: oilSheet({ lengthFeet: 40, millilitres: 24, ratio: 6, crown: [9, 14], lean: 2 }) },
    ],
    bowler: { ...LEFT, style: 'stroker' },
    posted: 'length',
  })

export const freshSide = () =>
  clubBlock({
    title: 'The quiet side of a busy lane',
    purpose:
      'Three right-handers have burnt their half for ten frames. Your half is fresh but for what they brought with them.',
    lanes: [{ name: 'lane 9', passes: oilSheet({ lengthFeet: 42, millilitres: 25, ratio: 4, crown: [7, 13] }) }],
    bowler: LEFT,
    field: [ANSA, BRONO, DARRO],
    fieldFramesBefore: 10,
    practiceThrows: 3,
  })
