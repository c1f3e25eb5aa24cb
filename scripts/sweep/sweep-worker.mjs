// A worker thread has no loader of its own on Node 20, so TypeScript is registered before the task is loaded.
import { register } from 'tsx/esm/api';

register();
const { default: task } = await import('./sweep-task.ts');
export default task;
