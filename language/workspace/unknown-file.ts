import { LSPErrorCodes, ResponseError } from 'vscode-languageserver';

/** Somebody asked about a file that is neither open nor one of the workspace's. Whoever answers says that there is nothing to say. */
export class UnknownFile extends ResponseError<void> {
    constructor(address: string) {
        super(LSPErrorCodes.RequestFailed, `${address} is not read as a recipe file.`);
        // Its constructor makes every error one of its own class.
        Object.setPrototypeOf(this, UnknownFile.prototype);
    }
}
