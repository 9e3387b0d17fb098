import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import type { KerfLexingReport } from '../parsing/lexer';

/** Shorter ones stand in nearly every line by chance. */
const longEnough = 3;

/**
 * Names that may be declared in a line which cannot be read: `laaser shed {` or `blankt ray {`. That they lead nowhere
 * is a consequence of it. Blanks and signs in the line do not count, since one of them may be the slip; between the markers of a
 * merge nothing has slipped, so there a name is a word of its own, however short.
 */
export function lostNames(document: LangiumDocument, broken: readonly Finding[]): (name: string) => boolean {
    if (broken.length === 0) return () => false;
    const text = document.textDocument.getText();
    const lines = new Set(
        broken.map(({ where }) => {
            const start = text.lastIndexOf('\n', where.offset - 1) + 1;
            const end = text.indexOf('\n', where.offset);
            return lettersOf(text.slice(start, end < 0 ? undefined : end));
        }),
    );
    const isInConflict = namesInConflicts(document);
    return (name) => {
        if (isInConflict(name)) return true;
        const letters = lettersOf(name);
        return letters.length >= longEnough && [...lines].some((line) => line.includes(letters));
    };
}

/** Whether a name stands between the markers of a merge, where nothing is read. */
export function namesInConflicts(document: LangiumDocument): (name: string) => boolean {
    const { conflicts = [] } = (document.parseResult.lexerReport as Partial<KerfLexingReport> | undefined) ?? {};
    const text = document.textDocument.getText();
    const words = new Set(
        conflicts.flatMap(
            ({ offset, end }) =>
                text
                    .slice(offset, end)
                    .normalize('NFC')
                    .match(/[^\s{},"]+/g) ?? [],
        ),
    );
    return (name) => words.has(name);
}

function lettersOf(text: string): string {
    return text.replaceAll(/[^\p{L}\p{N}]/gu, '');
}
