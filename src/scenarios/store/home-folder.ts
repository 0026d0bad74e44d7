import { homedir, userInfo } from 'node:os'
import { isAbsolute } from 'node:path'

/** The user's own folder: HOME where it names one, else what the system has for the user; never a path that depends on where one stands. */
export function homeFolder(): string {
  const named = homedir()
  return isAbsolute(named) ? named : userInfo().homedir
}
