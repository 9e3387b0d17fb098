import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The compiled polygon library's WebAssembly, as the server would hand it in. */
export function wasmFile(): Uint8Array {
    return readFileSync(createRequire(import.meta.url).resolve('clipper2-wasm/dist/umd/clipper2z.wasm'));
}
