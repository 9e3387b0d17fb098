import { type CstNode, DefaultValueConverter, type GrammarAST, type ValueType } from 'langium';
import { renamedIn } from '../vocabulary/editions';

/** Texts know `\"` and `\\`; any other backslash is itself, since paths are pasted from everywhere. */
export class KerfValueConverter extends DefaultValueConverter {
    protected override runConverter(rule: GrammarAST.AbstractRule, input: string, cstNode: CstNode): ValueType {
        if (rule.name === 'STRING') return textOf(input);
        // An id or class in quotes is what stands in the art, sign by sign.
        if (/^[#.]"/.test(input)) return `${input[0]}${textOf(input.slice(1))}`;
        // The same name may be typed as one letter or as a letter and its accent.
        const isName = rule.name === 'ID' || rule.name === 'STRAY' || rule.name === 'HASH' || rule.name === 'DOTTED';
        if (isName) return super.runConverter(rule, input.normalize('NFC'), cstNode);
        // Whatever it was called in an earlier edition, the tree holds the word of today.
        return renamedIn(rule.name)?.now ?? super.runConverter(rule, input, cstNode);
    }
}

/** The text inside the quotes; the closing quote may be missing on a broken line. */
export function textOf(quoted: string): string {
    const closed = /^"(?:\\.|[^"\\])*"$/.test(quoted);
    return quoted.slice(1, closed ? -1 : undefined).replaceAll(/\\(["\\])/g, '$1');
}
