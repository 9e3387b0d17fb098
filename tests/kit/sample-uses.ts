import { readdirSync, readFileSync } from 'node:fs';
import { type AstNode, AstUtils, CstUtils, GrammarAST } from 'langium';
import { isWithout } from '../../language/generated/ast';
import { constructs } from '../../language/vocabulary/constructs';
import { itemKey } from '../../language/vocabulary/item-key';
import { joints } from '../../language/vocabulary/joints';
import { allLines, allParts } from '../../language/vocabulary/lookup';
import { open } from '../language/services';

const folder = new URL('../../samples/', import.meta.url);

/** Which sample uses a word where it stands; undefined where none does. The faulty one shows nothing that should be copied. */
export interface SampleUses {
    /** A word in a statement of that type of the tree, be it the first or one inside. */
    word(type: string, word: string): string | undefined;
    /** A line of a block, by its key. */
    line(block: string, key: string): string | undefined;
    /** A number or name inside a statement of that type, by where the tree holds it. */
    part(type: string, key: string): string | undefined;
}

/** What the samples use, the first of them by name standing for all. */
export async function sampleUses(): Promise<SampleUses> {
    const first = new Map<string, string>();
    const note = (key: string, file: string) => {
        if (!first.has(key)) first.set(key, file);
    };
    const files = readdirSync(folder).filter((name) => name.endsWith('.kerf') && !name.includes('faulty'));
    for (const file of files.sort()) {
        const document = await open(readFileSync(new URL(file, folder), 'utf8'), `file:///samples/${file}`);
        const root = document.parseResult.value;
        for (const node of AstUtils.streamAst(root)) {
            const key = isWithout(node) ? 'without' : itemKey(node);
            if (key !== undefined && node.$container !== undefined) note(`line ${node.$container.$type}.${key}`, file);
            for (const [name, value] of Object.entries(node as AstNode & Record<string, unknown>)) {
                if (!name.startsWith('$') && isGiven(value)) note(`part ${node.$type}.${name}`, file);
            }
        }
        for (const leaf of CstUtils.streamCst(root.$cstNode!)) {
            if (GrammarAST.isKeyword(leaf.grammarSource)) note(`word ${leaf.astNode.$type} ${leaf.text}`, file);
        }
    }
    return {
        word: (type, word) => first.get(`word ${type} ${word}`),
        line: (block, key) => first.get(`line ${block}.${key}`),
        part: (type, key) => first.get(`part ${type}.${key}`),
    };
}

function isGiven(value: unknown): boolean {
    return value !== undefined && value !== false && !(Array.isArray(value) && value.length === 0);
}

/** Lines and words that read alike in every block or step: one of them shows how they are meant. */
const alike = new Set(['circle', 'rectangle', 'allow', 'without', 'called', 'was', 'over', 'lot']);

/** Rows of the reference that no sample uses, as `block: line`, `statement … word` or a word alone. */
export function unusedRows(uses: SampleUses): string[] {
    const statements = constructs.map(({ type, word }) => ({ row: word, word, use: uses.word(type, word) }));
    const lines = allLines.map(({ block, key, words }) => ({ row: `${block}: ${words}`, word: key, use: uses.line(block, key) }));
    const inside = joints.flatMap(({ type, word, what }) =>
        what === undefined ? [] : [{ row: `${type} … ${word}`, word, use: uses.word(type, word) }],
    );
    const parts = allParts.map(({ block, key, words }) => ({
        row: `${block} … ${words}`,
        word: words,
        use: uses.part(block, key),
    }));
    const rows = [...statements, ...lines, ...inside, ...parts];
    const isUsed = ({ word, use }: (typeof rows)[number]) =>
        use !== undefined || (alike.has(word) && rows.some((other) => other.word === word && other.use !== undefined));
    return [...new Set(rows.filter((row) => !isUsed(row)).map(({ row, word }) => (alike.has(word) ? word : row)))];
}
