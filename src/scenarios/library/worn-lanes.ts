import { clubBlock } from './block.js'
import { oilSheet } from './oil-sheet.js'
import { ANSA, BRONO, CILLE, CRANKER, DARRO, ELMI, FENJA, STROKER } from './people.js'

export const wornHouse = () =>
  clubBlock({
    title: 'House oil after the early shift',
    purpose: 'Three others have had twelve frames on it. The wall has moved in: start where it is, not where it was.',
    lanes: [{ name: 'lane 3', passes: oilSheet({ lengthFeet: 40, millilitres: 24, ratio: 10 }) }],
    field: [ANSA, BRONO, CILLE],
    fieldFramesBefore: 12,
    practiceThrows: 2,
  })

export const wornLong = () =>
  clubBlock({
    title: 'The long flat lane, second squad',
    purpose: 'The first squad has opened a track. Is the track your friend, or is there better oil inside of it?',
    lanes: [
      { name: 'lane 11', passes: oilSheet({ lengthFeet: 45, millilitres: 26, ratio: 2.5, crown: [7, 14], edge: 1 }) },
    ],
    posted: 'length',
    field: [ANSA, BRONO],
    fieldFramesBefore: 12,
    practiceThrows: 2,
  })

export const carrydown = () =>
  clubBlock({
    title: 'Oil where none was laid',
    purpose:
      'Smooth covers have dragged oil past the end of the pattern. A ball that hooked at forty feet now slides: believe it.',
    notes: 'Plastic and urethane take up little oil and lay it down again further on.',
    lanes: [{ name: 'lane 5', passes: oilSheet({ lengthFeet: 38, millilitres: 26, ratio: 4, crown: [7, 13] }) }],
    bowler: CRANKER,
    field: [ELMI, FENJA, { ...ELMI, name: 'Harro', level: '160', feet: 22, target: 11 }],
    fieldFramesBefore: 12,
    practiceThrows: 3,
  })

export const crankersAhead = () =>
  clubBlock({
    title: 'Behind the big hooks',
    purpose:
      'Darro and Brono burn up the middle with rough covers, and they are on your lane all game. Your ball turns less than theirs: stay out of their way or follow them in.',
    lanes: [{ name: 'lane 9', passes: oilSheet({ lengthFeet: 41, millilitres: 25, ratio: 3.5, crown: [7, 14] }) }],
    bowler: STROKER,
    field: [DARRO, BRONO],
    fieldFramesBefore: 8,
  })

export const fullLane = () =>
  clubBlock({
    title: 'Five on a lane',
    purpose: 'Everyone is here and everyone plays somewhere else. The oil goes faster than the frames.',
    lanes: [{ name: 'lane 9', passes: oilSheet({ lengthFeet: 42, millilitres: 25, ratio: 5 }) }],
    field: [ANSA, BRONO, CILLE, DARRO, ELMI],
    practiceThrows: 3,
  })
