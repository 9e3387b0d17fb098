import { text } from 'node:stream/consumers';
import { largestRecipe } from '../files/guarded-file-system';
import { UsageError } from './usage-error';

/** What stands for standard input in place of a file's name. */
export const standardInput = '-';

/** Where its text is taken to lie, when nothing else is said: in this folder, so that what it uses is found from here. */
export const inputName = 'standard-input.kerf';

/** @throws UsageError where it is longer than any recipe */
export async function readStandardInput(): Promise<string> {
    let length = 0;
    const limited = async function* (): AsyncGenerator<Uint8Array> {
        for await (const chunk of process.stdin) {
            length += (chunk as Uint8Array).length;
            if (length > largestRecipe) throw new UsageError('What comes from standard input is too large for a recipe.');
            yield chunk as Uint8Array;
        }
    };
    return text(limited());
}
