import { clubBlock } from './block.js'
import { oilSheet } from './oil-sheet.js'
import { CRANKER, STROKER } from './people.js'

export const challengeFortyOne = () =>
  clubBlock({
    title: 'Between house and flat',
    purpose:
      'Five to one, and a ball that turns little: some hold to the right, less than you are used to. How far can you miss before it does not come back?',
    lanes: [{ name: 'lane 4', passes: oilSheet({ lengthFeet: 41, millilitres: 25, ratio: 5.5 }) }],
    bowler: STROKER,
  })

export const sportThirtyNine = () =>
  clubBlock({
    title: 'Thirty-nine feet of sport oil',
    purpose:
      'A fair, flat lane of middling length and a hand that turns the ball hard. Every ball of the bag has a line; find the one with room.',
    lanes: [{ name: 'lane 4', passes: oilSheet({ lengthFeet: 39, millilitres: 23, ratio: 2.8, crown: [7, 14] }) }],
    bowler: CRANKER,
    posted: 'length',
  })

export const flatForty = () =>
  clubBlock({
    title: 'Almost as much outside as in',
    purpose:
      'Nothing on this lane steers a ball. What counts is the angle you choose and how straight you dare to play.',
    lanes: [{ name: 'lane 6', passes: oilSheet({ lengthFeet: 40, millilitres: 24, ratio: 1.8, crown: [6, 15] }) }],
    bowler: STROKER,
  })

export const heavyHouse = () =>
  clubBlock({
    title: 'House oil laid with a heavy hand',
    purpose:
      'The same walls, a fifth more oil. The ball that was right last week slides past its place; change the ball or the line?',
    lanes: [{ name: 'lane 3', passes: oilSheet({ lengthFeet: 42, millilitres: 29, ratio: 8 }) }],
  })

export const lightHouse = () =>
  clubBlock({
    title: 'House oil running out',
    purpose: 'Little oil and all of it in the middle: strong balls burn up early here. Move in time.',
    lanes: [{ name: 'lane 3', passes: oilSheet({ lengthFeet: 38, millilitres: 18.5, ratio: 11 }) }],
    games: 2,
  })

export const firstLeague = () =>
  clubBlock({
    title: 'The first league night',
    purpose: 'For beginners. Two balls, a kind lane, a bowler who is still learning: which of the two, and from where?',
    notes: 'Misses are wide here, so lines with room are worth more than lines with angle.',
    lanes: [{ name: 'lane 3', passes: oilSheet({ lengthFeet: 40, millilitres: 23, ratio: 10 }) }],
    bag: clubBlock({ title: '', purpose: '', lanes: [] }).bag.filter(
      ({ id }) => id === 'weak-pearl' || id === 'plastic-spare',
    ),
    bowler: { level: 'recreational', hand: 'right', style: 'stroker' },
    practiceThrows: 6,
  })

export const currentFrameSport = () =>
  clubBlock({
    title: 'Every frame for itself',
    purpose: 'Scored frame by frame: a strike is thirty whatever follows. Does that change what you risk?',
    lanes: [{ name: 'lane 6', passes: oilSheet({ lengthFeet: 41, millilitres: 25, ratio: 3.2, crown: [7, 14] }) }],
    bowler: STROKER,
    scoring: 'current-frame',
  })
