import { readdirSync, readFileSync } from 'node:fs';
import { describe, it } from 'vitest';
import { expectMarked } from './marked';
import { open } from './services';

const folder = new URL('./traps/', import.meta.url);

/**
 * Texts that were read and then ignored, or read as something else, a file each: under a line stand carets, the rule and
 * words of the message; a text without carets is one of which nothing may be said. Behind `--- name.kerf` stands another
 * file of the same folder.
 */
describe('what is written counts, or is refused', () => {
    for (const file of readdirSync(folder).filter((name) => name.endsWith('.kerf'))) {
        it(file.replace('.kerf', '').replaceAll('-', ' '), async () => {
            const [text = '', ...parts] = readFileSync(new URL(file, folder), 'utf8').split(/^--- /m);
            const home = `file:///traps/${file.replace('.kerf', '')}/`;
            for (const part of parts) {
                const end = part.indexOf('\n');
                await open(part.slice(end + 1), `${home}${part.slice(0, end).trim()}`);
            }
            await expectMarked(text, `${home}${file}`);
        });
    }
});
