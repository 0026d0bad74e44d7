import { drillJsonSchema, scenarioJsonSchema } from '../files/schema/json-schema.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { type CommandConsole, printText } from './console/console.js'

/** The file format as JSON Schema (draft 7), for editors that complete and check while one writes. */
export function scenarioSchemaCommand({ drill }: { readonly drill?: boolean }, console: CommandConsole): number {
  if (drill) {
    printText(console, jsonText(drillJsonSchema()))
    console.tell(
      'Keep it as drill.schema.json and begin a drill with "# yaml-language-server: $schema=./drill.schema.json"; editors with a YAML language server then complete and check.',
    )
    return EXIT.fine
  }
  printText(console, jsonText(scenarioJsonSchema()))
  console.tell(
    'Keep it as scenario.schema.json and begin a scenario with "# yaml-language-server: $schema=./scenario.schema.json" (YAML) or "$schema": "./scenario.schema.json" (JSON); editors with a YAML language server then complete and check. What only the loader knows, such as the rules for balls, dryboard scenario check tells.',
  )
  return EXIT.fine
}
