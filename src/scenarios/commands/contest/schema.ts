import { contestJsonSchema } from '../../files/schema/json-schema.js'
import { EXIT } from '../../files/text/exit-codes.js'
import { jsonText } from '../../files/text/json.js'
import { type CommandConsole, printText } from '../console/console.js'

/** The format of a contest's files as JSON Schema (draft 7), for editors. */
export function contestSchemaCommand(of: 'rules' | 'pack' | 'entrants', console: CommandConsole): number {
  printText(console, jsonText(contestJsonSchema(of)))
  return EXIT.fine
}
