import { readFileSync } from 'node:fs';
import { DefaultTokenBuilder, EmptyFileSystem, type GrammarAST, prepareLangiumParser, URI } from 'langium';
import { describe, expect, it } from 'vitest';
import type { File } from '../../language/generated/ast';
import { createKerfServices } from '../../language/module';
import { KerfTokenBuilder } from '../../language/parsing/token-builder';
import { root } from '../house/source-files';

/**
 * language/parsing/recovery.ts replaces methods that the parser engine and Langium do not promise to keep. They were read in these
 * versions; with others, read them once more before the numbers here are changed.
 */
const readIn = { langium: '4.4.0', engine: '13.2.0' };

/** Replaced, with the number of arguments that they were declared with. */
const replaced = {
    getNextPossibleTokenTypes: 1,
    tryInRuleRecovery: 2,
    canPerformInRuleRecovery: 2,
    findReSyncTokenType: 0,
    reSyncTo: 1,
    tryInRepetitionRecovery: 4,
};

/** Called by the replacements. */
const called = [
    'LA',
    'SKIP_TOKEN',
    'consumeToken',
    'moveToTerminatedState',
    'exportLexerState',
    'importLexerState',
    'buildFullFollowKeyStack',
    'getFollowSetFromFollowKey',
    'getTokenToInsert',
    'consumeInternalError',
];

interface Opened {
    readonly wrapper: Record<string, unknown>;
    readonly nodeBuilder: Record<string, unknown>;
}

describe('the private members that error recovery stands on', () => {
    const parser = prepareLangiumParser(createKerfServices(EmptyFileSystem).kerf) as unknown as Opened;
    const arity = (holder: Record<string, unknown>, name: string): number | undefined => {
        const method = holder[name];
        return typeof method === 'function' ? method.length : undefined;
    };

    it('are those of the versions that they were read from', () => {
        const versionOf = (name: string): string =>
            (JSON.parse(readFileSync(`${root}node_modules/${name}/package.json`, 'utf8')) as { version: string }).version;
        expect({ langium: versionOf('langium'), engine: versionOf('chevrotain') }).toEqual(readIn);
    });

    it('are there to be replaced, with the arguments that the replacements take', () => {
        const found = Object.fromEntries(Object.keys(replaced).map((name) => [name, arity(parser.wrapper, name)]));
        expect(found).toEqual(replaced);
        expect(arity(parser.nodeBuilder, 'buildLeafNode')).toBe(2);
    });

    it('are there to be called', () => {
        expect(called.filter((name) => arity(parser.wrapper, name) === undefined)).toEqual([]);
        expect(Array.isArray(parser.wrapper._errors)).toBe(true);
    });

    it('are built once, and each workshop reads by its own names all the same', async () => {
        const workshops = [createKerfServices(EmptyFileSystem), createKerfServices(EmptyFileSystem)];
        const [one, other] = workshops.map(({ kerf }) => kerf.parser.LangiumParser as unknown as Opened);
        expect(one!.wrapper).toBe(other!.wrapper);
        const linked = workshops.map(async ({ shared }, index) => {
            await shared.workspace.WorkspaceManager.initializeWorkspace([]);
            const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder } = shared.workspace;
            const text = `board plank { thickness ${index + 5} mm }\nrecipe tray { blank top { of plank } }\n`;
            const document = LangiumDocumentFactory.fromString<File>(text, URI.parse('memory:/tray.kerf'));
            LangiumDocuments.addDocument(document);
            await DocumentBuilder.build([document], { validation: false });
            return document.references.map((each) => ('ref' in each ? each.ref?.$cstNode?.text : undefined));
        });
        expect(await Promise.all(linked)).toEqual([['board plank { thickness 5 mm }'], ['board plank { thickness 6 mm }']]);
    });

    it('hold nothing of a text once it has been read', () => {
        const { LangiumParser } = createKerfServices(EmptyFileSystem).kerf.parser;
        const { value } = LangiumParser.parse('recipe tray {\n}\nboard oak {\n');
        const { wrapper, nodeBuilder } = LangiumParser as unknown as Opened;
        expect(value.$cstNode?.text).toContain('recipe tray');
        expect([wrapper.input, wrapper._errors, nodeBuilder.rootNode, nodeBuilder.nodeStack]).toEqual([[], [], undefined, []]);
    });
});

it('the lexer knows for each word the same names that may be longer as Langium does', () => {
    class Slow extends KerfTokenBuilder {
        protected override findLongerAlt(keyword: GrammarAST.Keyword, terminals: never[]): never[] {
            return (DefaultTokenBuilder.prototype as unknown as Slow).findLongerAlt.call(this, keyword, terminals) as never[];
        }
    }
    const grammar = createKerfServices(EmptyFileSystem).kerf.Grammar;
    const longer = (builder: KerfTokenBuilder) =>
        builder.buildTokens(grammar).map(({ name, LONGER_ALT }) => [name, [LONGER_ALT ?? []].flat().map((each) => each.name)]);
    const quick = longer(new KerfTokenBuilder());
    expect(quick).toEqual(longer(new Slow()));
    expect(quick.find(([name]) => name === 'engrave')).toEqual(['engrave', ['UNIT', 'ID']]);
});
