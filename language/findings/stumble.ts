import type { LangiumDocument } from 'langium';
import type { Where } from '../../shared/quantity/where';
import type { Token } from '../parsing/token';

/** What the parser stumbled over, with everything that is needed to say it. */
export interface Stumble {
    readonly uri: string;
    readonly document: LangiumDocument;
    /** What could have stood there: names of the parser. */
    readonly expected: readonly string[];
    /** The statements that were open, outermost first: types of the syntax tree. */
    readonly rules: readonly string[];
    readonly previous: Token | undefined;
    /** The token that does not fit; undefined where the line or the file ends. */
    readonly actual: Token | undefined;
    readonly where: Where;
}
