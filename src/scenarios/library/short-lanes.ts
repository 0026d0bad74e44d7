import { clubBlock } from './block.js'
import { oilSheet } from './oil-sheet.js'
import { ANSA, BRONO, STROKER } from './people.js'

export const shortFlat = () =>
  clubBlock({
    title: 'Thirty-three feet, nearly flat',
    purpose: 'The ball has half the lane to hook on. Find the line and the ball that do not use all of it.',
    notes: 'Calm covers and outside lines do well; a strong cover has to start far inside and loses its room.',
    lanes: [{ name: 'lane 1', passes: oilSheet({ lengthFeet: 33, millilitres: 20, ratio: 2.2, crown: [7, 13] }) }],
  })

export const shortHouse = () =>
  clubBlock({
    title: 'The short house lane',
    purpose:
      'A wall of oil, but an early end: the wall holds you to 36 feet and no further. Watch where the ball turns.',
    lanes: [{ name: 'lane 2', passes: oilSheet({ lengthFeet: 36, millilitres: 21, ratio: 9 }) }],
    bowler: STROKER,
  })

export const shortWorn = () =>
  clubBlock({
    title: 'The short lane after league night',
    purpose:
      'Two others have bowled ten frames here before you. The sheet on the wall is of this morning: how much of it is left?',
    lanes: [{ name: 'lane 1', passes: oilSheet({ lengthFeet: 35, millilitres: 22, ratio: 3, crown: [7, 13] }) }],
    field: [ANSA, BRONO],
    fieldFramesBefore: 10,
    practiceThrows: 2,
  })

export const shortUnseen = () =>
  clubBlock({
    title: 'Something short',
    purpose: 'All you are told is the length. Find out in six throws whether the outside holds oil.',
    lanes: [
      {
        name: 'lane 2',
        drawn: { lengthFeet: [33, 37], volumeMillilitres: [19, 25], ratio: [1.8, 9], symmetric: 'yes' },
      },
    ],
    posted: 'length',
    practiceThrows: 6,
  })
