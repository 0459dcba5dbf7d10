/**
 * Who is there: runs and workers write themselves into two lists at the service, and read the other's.
 *
 * Questions do not travel this way. It tells a run how many threads serve it, and lets both sides name a partner that does
 * not fit. Entries fade by the service's own clock when nobody renews them.
 */
import type { IRedisClient } from 'bullmq';
import { z } from 'zod';
import { PREFIX, runScript } from './connection.ts';

/** s that an entry lives; ms between renewals. */
const FADES = 20;
export const RENEWAL = 5000;
/** Entries that are read at most, and characters of one. */
const MOST = 2000;
const LONGEST = 400;

const entrySchema = z.object({
  name: z.string().min(1).max(120),
  modelVersion: z.string().regex(/^[0-9a-f]{64}$/),
  arithmetic: z.string().regex(/^[0-9a-f]{8}$/),
  threads: z.number().int().min(0).max(4096),
});

export type Entry = z.infer<typeof entrySchema>;

const SCRIPT = {
  name: 'pulsejetPresence',
  keys: 2,
  lua: `
local now = redis.call('TIME')[1]
if ARGV[2] == 'here' then redis.call('ZADD', KEYS[1], now, ARGV[1]) else redis.call('ZREM', KEYS[1], ARGV[1]) end
redis.call('EXPIRE', KEYS[1], ${3 * FADES})
redis.call('ZREMRANGEBYSCORE', KEYS[1], '-inf', '(' .. (now - ${FADES}))
return redis.call('ZREVRANGEBYSCORE', KEYS[2], '+inf', now - ${FADES}, 'LIMIT', 0, ${MOST})`,
};

const LISTS = { run: `${PREFIX}:runs`, worker: `${PREFIX}:workers` } as const;

/**
 * Renews one's own entry, or takes it away, and reads the other side's. Entries that make no sense are passed over.
 * @param role which list the entry belongs to
 */
export async function meet(client: IRedisClient, role: 'run' | 'worker', entry: Entry, here = true): Promise<Entry[]> {
  const other = role === 'run' ? 'worker' : 'run';
  const found = await runScript(client, SCRIPT, [
    LISTS[role],
    LISTS[other],
    JSON.stringify(entry),
    here ? 'here' : 'gone',
  ]);
  return (found as string[]).flatMap((text) => readEntry(text) ?? []);
}

function readEntry(text: string): Entry | null {
  if (text.length > LONGEST) return null;
  try {
    return entrySchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}
