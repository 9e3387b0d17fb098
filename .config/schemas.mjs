/**
 * JSON Schemas (draft 7) of what the command line writes as JSON, made of the types in server/cli/formats/documents.ts, with their comments.
 *
 *     node .config/schemas.mjs      writes dist/schemas/NAME.schema.json
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildGenerator, getProgramFromFiles } from 'typescript-json-schema';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Commands whose JSON is described. */
export const documents = ['check', 'plan', 'diff', 'table', 'week', 'season', 'history', 'curve', 'explain', 'vocabulary'];

/**
 * Schemas by the name of their command.
 * @param closed whether what a schema does not name is refused: for our tests. Published ones let a later version add something
 */
export function schemasOf({ closed = false } = {}) {
    const file = path.join(root, 'server/cli/formats/documents.ts');
    const options = {
        strict: true,
        target: 'ES2023',
        module: 'ESNext',
        moduleResolution: 'bundler',
        skipLibCheck: true,
        types: [],
    };
    const program = getProgramFromFiles([file], options, root);
    const settings = { required: true, noExtraProps: closed, ignoreErrors: true, strictNullChecks: true };
    const generator = quietly(() => buildGenerator(program, settings));
    if (generator === null) throw new Error('The types of the JSON documents cannot be read.');
    return new Map(
        documents.map((name) => {
            const type = `${name[0].toUpperCase()}${name.slice(1)}Document`;
            const schema = quietly(() => generator.getSchemaForSymbol(type));
            const { $schema, ...rest } = schema;
            return [name, { $schema, title: `kerfbook ${name}, as JSON`, ...rest }];
        }),
    );
}

/** It tells of each property whose value it takes for no default. */
function quietly(work) {
    const { warn } = console;
    console.warn = () => {};
    try {
        return work();
    } finally {
        console.warn = warn;
    }
}

/** Writes them to a folder, one file each. */
export function writeSchemas(folder = path.join(root, 'dist/schemas')) {
    mkdirSync(folder, { recursive: true });
    for (const [name, schema] of schemasOf())
        writeFileSync(path.join(folder, `${name}.schema.json`), `${JSON.stringify(schema, null, 2)}\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeSchemas();
