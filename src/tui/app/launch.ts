/**
 * Loads the screen only after React has been told that this is production: its development build keeps a growing
 * list of timings, and a mixture of both builds draws nothing at all.
 */
export async function loadScreen(): Promise<typeof import('./app.js')> {
  process.env.NODE_ENV ??= 'production'
  return await import('./app.js')
}
