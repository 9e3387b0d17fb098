import type { LangiumCoreServices, LangiumParser } from 'langium';
import { KerfLexer } from './lexer';
import { createKerfParser } from './recovery';

// Making lexer and parser out of the grammar takes longer than reading a workshop's files, and a process opens many workshops: each
// revision that is compared is one. What they are made of is the same for all, but for the linker, which knows a workshop's names.

let lexer: KerfLexer | undefined;
let parser: LangiumParser | undefined;

export function sharedLexer(services: LangiumCoreServices): KerfLexer {
    lexer ??= new KerfLexer(services);
    return lexer;
}

/** The parser of all services, which lend it their linker for one text at a time. */
export function sharedParser(services: LangiumCoreServices): LangiumParser {
    parser ??= createKerfParser(services);
    const shared = parser;
    const borrowed = shared as unknown as { linker: LangiumCoreServices['references']['Linker'] | undefined };
    // Reading is not interrupted, so that two workshops never have it at once.
    const parse: LangiumParser['parse'] = (input, options) => {
        borrowed.linker = services.references.Linker;
        try {
            return shared.parse(input, options);
        } finally {
            borrowed.linker = undefined;
        }
    };
    return Object.create(shared, { parse: { value: parse } }) as LangiumParser;
}
