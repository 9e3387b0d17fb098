import { EmptyFileSystem, URI } from 'langium';
import { expect, it, vi } from 'vitest';
import { createKerfServices } from '../../language/module';
import { writeRun } from '../../server/writing/write-run';

const { shared } = createKerfServices(EmptyFileSystem, {});
const document = shared.workspace.LangiumDocumentFactory.fromString('recipe plate { }', URI.parse('file:///shop/plate.kerf'));
const run = { recipe: 'plate', date: '2026-11-28' };

it('a name that is taken is never written over, and another is drawn', async () => {
    const looked: string[] = [];
    const replace = vi.fn(async () => {});
    const store = {
        look: async (path: string) => {
            looked.push(path);
            return { kind: looked.length < 3 ? ('folder' as const) : ('missing' as const) };
        },
        replace,
        remove: async () => {},
    };
    const written = await writeRun(
        document,
        run,
        () => store,
        () => 'run plate 2026-11-28 { }\n',
    );
    expect(new Set(looked).size).toBe(3);
    expect(written?.uri).toBe(`file:///shop/${looked[2]}`);
    expect(replace).toHaveBeenCalledTimes(1);
    expect(replace.mock.calls[0]).toEqual([new Map([[looked[2], new TextEncoder().encode('run plate 2026-11-28 { }\n')]])]);
});

it('gives up where every name is taken, and says so', async () => {
    const store = { look: async () => ({ kind: 'link' as const }), replace: async () => {}, remove: async () => {} };
    const writing = writeRun(
        document,
        run,
        () => store,
        () => 'run plate 2026-11-28 { }\n',
    );
    await expect(writing).rejects.toThrow('No free name was found for the run in runs.');
});
