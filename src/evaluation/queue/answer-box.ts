/** Where answers wait for their run: one key a batch, apart from the job, so that large texts pass the service once. */
import type { IRedisClient } from 'bullmq';
import { PREFIX, runScript } from './connection.ts';
import { LONGEST_ANSWER } from './messages.ts';

/** s that an answer waits for a run that does not come. */
const WAITS = 3600;

const box = (id: string) => `${PREFIX}:answer:${id}`;

export async function putAnswer(client: IRedisClient, id: string, text: string): Promise<void> {
  await client.set(box(id), text, { EX: WAITS });
}

const TAKE = {
  name: 'pulsejetTakeAnswer',
  keys: 1,
  lua: `
local length = redis.call('STRLEN', KEYS[1])
local text = false
if length > 0 and length <= ${4 * LONGEST_ANSWER} then text = redis.call('GET', KEYS[1]) end
redis.call('DEL', KEYS[1])
return text`,
};

/** Takes an answer out, or null when none lies there. One that is far too long is thrown away unread. */
export async function takeAnswer(client: IRedisClient, id: string): Promise<string | null> {
  return (await runScript(client, TAKE, [box(id)])) as string | null;
}
