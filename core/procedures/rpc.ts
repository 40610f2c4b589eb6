import { RPCHandler } from '@orpc/server/fetch';
import type { Context } from './context.ts';
import { answering } from './handler.ts';
import { router } from './router.ts';

/** The router over the wire: requests under /api/rpc. Undefined for an address that no procedure has. */
export function createRpc(log: (line: string) => void): {
  handle(request: Request, context: Context): Promise<Response | undefined>;
} {
  const rpc = new RPCHandler(router, { clientInterceptors: [answering(log)] });
  return {
    async handle(request, context) {
      const { response } = await rpc.handle(request, { prefix: '/api/rpc', context });
      return response;
    },
  };
}
