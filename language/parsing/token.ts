import type { LexerResult } from 'langium';

/** A token of the text, in the shape in which the parser takes it. */
export type Token = LexerResult['tokens'][number];

/** After so many errors the rest of the file is left unread: it is no recipe, or it is just being pasted. */
export const mostErrors = 300;

/** Whether a statement can begin here: first on its line, or after a brace. The lexer has marked it. */
export function startsStatement(token: Token): boolean {
    return token.payload === 'start';
}

/** Made up by the lexer or the parser; there is nothing of it in the text. */
export function isMadeUp(token: Token): boolean {
    return token.isInsertedInRecovery === true || !(token.startOffset >= 0);
}

export function isWord(token: Token): boolean {
    return /^[a-z]/.test(token.tokenType.name);
}
