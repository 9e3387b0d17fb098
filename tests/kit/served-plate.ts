import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { LanguageClient } from './language-client';
import { shop } from './shop';

/** A folder with the shop and one recipe, `plate.kerf`, which is open in a client of a server of its own. */
export interface ServedPlate {
    readonly folder: string;
    readonly client: LanguageClient;
    uriOf(name: string): string;
    stop(): void;
}

/** Ready once the server has said what it thinks of the recipe. */
export async function servePlate(recipe: string): Promise<ServedPlate> {
    const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-plate-')));
    const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).toString();
    writeFileSync(path.join(folder, 'shop.kerf'), shop);
    writeFileSync(path.join(folder, 'plate.kerf'), recipe);
    const { client } = await LanguageClient.start(folder, pathToFileURL(folder).toString());
    await client.open(uriOf('plate.kerf'), recipe);
    await client.diagnostics(uriOf('plate.kerf'), () => true);
    const stop = (): void => {
        client.stop();
        rmSync(folder, { recursive: true, force: true });
    };
    return { folder, client, uriOf, stop };
}
