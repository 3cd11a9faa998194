/** A thread that cannot start. */
throw new Error('the thread cannot start');
