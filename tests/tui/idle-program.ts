/** Says as JSON what every screen does when left alone; a process of its own, for a test runner has timers of its own. */
process.env.NODE_ENV ??= 'production'
const { idleOnEveryScreen } = await import('./every-screen.js')
process.stdout.write(JSON.stringify(await idleOnEveryScreen()))
process.exit(0)
