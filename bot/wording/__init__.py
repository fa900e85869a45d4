"""Every sentence that leaves. Pure: numbers and names in, words out, all within GSM-7."""
