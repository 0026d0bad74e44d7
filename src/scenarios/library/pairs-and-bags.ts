import { clubBlock } from './block.js'
import { oilSheet } from './oil-sheet.js'
import { BRONO, CRANKER, DARRO, STROKER } from './people.js'

export const unlikePair = () =>
  clubBlock({
    title: 'One short, one long',
    purpose: 'Two lanes that share nothing. Keep two plans in your head and do not carry a miss from one to the other.',
    lanes: [
      { name: 'lane 5', passes: oilSheet({ lengthFeet: 36, millilitres: 22, ratio: 3, crown: [7, 13] }) },
      { name: 'lane 6', passes: oilSheet({ lengthFeet: 44, millilitres: 26, ratio: 3, crown: [7, 14] }) },
    ],
    posted: 'nothing',
  })

export const wetAndDry = () =>
  clubBlock({
    title: 'The wetter lane of the pair',
    purpose: 'The same oil on both lanes, a quarter more of it on the second. How many boards is that worth?',
    lanes: [
      { name: 'lane 7', passes: oilSheet({ lengthFeet: 41, millilitres: 21, ratio: 6 }) },
      { name: 'lane 8', passes: oilSheet({ lengthFeet: 41, millilitres: 27, ratio: 6 }) },
    ],
    bowler: CRANKER,
    posted: 'length',
  })

export const busyPair = () =>
  clubBlock({
    title: 'Unseen pair, two ahead of you',
    purpose:
      'Oil nobody has seen, and two strong bowlers who have been on it for six frames. Their balls are your best witnesses.',
    lanes: [
      {
        name: 'lane 7',
        drawn: { lengthFeet: [37, 45], volumeMillilitres: [21, 28], ratio: [2, 7], symmetric: 'yes' },
      },
      {
        name: 'lane 8',
        drawn: { lengthFeet: [37, 45], volumeMillilitres: [21, 28], ratio: [2, 7], symmetric: 'yes' },
      },
    ],
    posted: 'nothing',
    bowler: STROKER,
    field: [BRONO, DARRO],
    fieldFramesBefore: 6,
    practiceThrows: 3,
  })

export const threeOfSix = () =>
  clubBlock({
    title: 'Three balls in the car',
    purpose: 'Six balls at home, room for three, and a long flat lane for two games. Which ones, and what for?',
    lanes: [
      { name: 'lane 12', passes: oilSheet({ lengthFeet: 44, millilitres: 26, ratio: 2.5, crown: [7, 14], edge: 1 }) },
    ],
    takeBalls: 3,
    games: 2,
  })

export const threeForAnything = () =>
  clubBlock({
    title: 'Three balls for whatever comes',
    purpose:
      'Nobody says what is on the lane. Take three balls that cover each other, then find out which one it needed.',
    lanes: [
      {
        name: 'lane 2',
        drawn: { lengthFeet: [34, 47], volumeMillilitres: [19, 30], ratio: [1.8, 10], symmetric: 'either' },
      },
    ],
    posted: 'nothing',
    bowler: CRANKER,
    takeBalls: 3,
  })
