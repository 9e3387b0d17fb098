import type { WireServer } from './wire-server';

interface Message {
    readonly id?: number;
    readonly method?: string;
    readonly params?: Record<string, unknown>;
    readonly result?: Record<string, unknown>;
}

/** Looks into a server started with `--inspect=0`: its main thread and its workers, by V8's own inspector. */
export class HeapOf {
    private count = 0;
    private readonly waiting = new Map<string, (result: Record<string, unknown>) => void>();
    private readonly workers = new Set<string>();

    private constructor(private readonly socket: WebSocket) {
        socket.addEventListener('message', ({ data }) => this.receive(JSON.parse(String(data)) as Message, ''));
    }

    static async of(server: WireServer): Promise<HeapOf> {
        for (let left = 600; !/ws:\/\/\S+/.test(server.complaints); left--) {
            if (left === 0) throw new Error(`No inspector: ${server.complaints}`);
            await new Promise((resolve) => setTimeout(resolve, 50));
        }
        const socket = new WebSocket(/ws:\/\/\S+/.exec(server.complaints)![0]);
        await new Promise((resolve, reject) => {
            socket.addEventListener('open', resolve);
            socket.addEventListener('error', reject);
        });
        const heap = new HeapOf(socket);
        await heap.ask('NodeWorker.enable', { waitForDebuggerOnStart: false });
        return heap;
    }

    /** Bytes that are still held in all threads after a full collection. */
    async retained(): Promise<{ readonly main: number; readonly workers: number }> {
        const sums = { main: 0, workers: 0 };
        for (const thread of ['', ...this.workers]) {
            // What a first collection sets free to be finalised goes with the second.
            for (let times = 0; times < 2; times++) await this.ask('HeapProfiler.collectGarbage', {}, thread);
            const { usedSize } = await this.ask('Runtime.getHeapUsage', {}, thread);
            sums[thread === '' ? 'main' : 'workers'] += Number(usedSize);
        }
        return sums;
    }

    close(): void {
        this.socket.close();
    }

    private ask(method: string, params: object, thread = ''): Promise<Record<string, unknown>> {
        const id = ++this.count;
        const message = JSON.stringify({ id, method, params });
        const sent =
            thread === ''
                ? message
                : JSON.stringify({
                      id: ++this.count,
                      method: 'NodeWorker.sendMessageToWorker',
                      params: { sessionId: thread, message },
                  });
        return new Promise((resolve) => {
            this.waiting.set(`${thread} ${id}`, resolve);
            this.socket.send(sent);
        });
    }

    private receive({ id, method, params, result }: Message, thread: string): void {
        if (id !== undefined) {
            this.waiting.get(`${thread} ${id}`)?.(result ?? {});
            this.waiting.delete(`${thread} ${id}`);
        } else if (method === 'NodeWorker.attachedToWorker') this.workers.add(String(params!.sessionId));
        else if (method === 'NodeWorker.detachedFromWorker') this.workers.delete(String(params!.sessionId));
        else if (method === 'NodeWorker.receivedMessageFromWorker')
            this.receive(JSON.parse(String(params!.message)) as Message, String(params!.sessionId));
    }
}
