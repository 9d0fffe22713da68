/**
 * The network between a cart and its database, for tests: a relay on a port of its own that can be cut and mended. For
 * the cart a cut is what a server that went away is: open connections break in the midst of whatever they carry, new ones
 * are refused.
 */
import { connect, createServer, type Server, type Socket } from 'node:net';

export interface Network {
  /** The same address, led through the network. */
  readonly through: (url: string) => string;
  readonly cut: () => void;
  /** Lets connections through again; resolves once it does. */
  readonly mend: () => Promise<void>;
}

/** A whole network to a port of this machine. */
export async function startNetwork(toPort: number): Promise<Network> {
  const ends = new Set<Socket>();
  const carry = (from: Socket, to: Socket) => {
    ends.add(from);
    from.on('data', (bytes) => to.write(bytes));
    from.on('error', () => undefined); // the other end hears of it by the close
    from.on('close', () => {
      ends.delete(from);
      to.destroy();
    });
  };
  const listen = (port: number) =>
    new Promise<Server>((resolve, reject) => {
      const server = createServer((near) => {
        const far = connect(toPort, '127.0.0.1');
        carry(near, far);
        carry(far, near);
      });
      server.once('error', reject); // somebody else has taken the port meanwhile
      server.listen(port, '127.0.0.1', () => resolve(server));
    });
  let server: Server | null = await listen(0);
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  return {
    through: (url) => url.replace(`:${toPort}/`, `:${port}/`),
    cut: () => {
      server?.close();
      server = null;
      for (const end of ends) end.resetAndDestroy();
    },
    mend: async () => {
      server ??= await listen(port);
    },
  };
}
