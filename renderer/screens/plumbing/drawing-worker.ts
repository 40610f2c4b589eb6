/** The layout library in a worker of its own: it answers messages, so that the window stays smooth meanwhile. */
import 'elkjs/lib/elk-worker.min.js';
