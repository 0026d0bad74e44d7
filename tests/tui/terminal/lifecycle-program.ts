import { holdTerminal } from '../../../src/tui/terminal/lifecycle.js'

holdTerminal({ input: {}, output: process.stdout, errors: process.stderr })
const way = process.argv[2]
process.stdout.write('ready')
if (way === 'wait') setTimeout(() => {}, 20_000)
else if (way === 'throw') {
  setTimeout(() => {
    throw new Error('the pins are on fire')
  }, 1)
} else if (way === 'reject') Promise.reject(new Error('the pins are on fire'))
