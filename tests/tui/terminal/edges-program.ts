import { takeTerminal } from '../../../src/tui/terminal/edges.js'

const { painter, keys } = takeTerminal(process)
let pressed = ''
const show = () => painter.show([`on the screen ${pressed}`])
keys.on('readable', () => {
  for (let key = keys.read(); key !== null; key = keys.read()) pressed += key
  show()
})
show()
