import { z } from 'zod';

// The page's security policy forbids code made from text, which zod would otherwise try. Imported before any schema.
z.config({ jitless: true });
