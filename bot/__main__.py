"""`python -m bot`: the command line."""

from bot.cli import app

if __name__ == "__main__":
    app(prog_name="pailtext")
