/** The program's version; a test keeps it equal to package.json's, which the bundle does not carry. */
export const VERSION = '0.1.0'
