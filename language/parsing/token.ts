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

/** A word of the language, or a name that is spelled like one. */
export function isWord(token: Token): boolean {
    return /^[a-z]/.test(token.tokenType.name);
}

/** The kind of token for a word that stands where a name can stand. */
export function nameLike(word: string): string {
    return `${word}~`;
}

/** Whether a word can be a name where it stands: right behind a word that a name follows, never first on its line. */
export function canBeName(token: Token): boolean {
    return token.tokenType.name.endsWith('~');
}

/** The kind of token for what is surely the word. */
export function wordType(token: Token): Token['tokenType'] {
    return canBeName(token) ? token.tokenType.CATEGORIES![0]! : token.tokenType;
}
