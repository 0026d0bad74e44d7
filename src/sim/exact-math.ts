/** Contract only; the implementation follows. All use + - * / and sqrt alone, so every engine gives the same bits. */
export declare function sine(radians: number): number
