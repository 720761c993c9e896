"""`python -m ionwright`: the same commands as the `ionwright` program."""

from ionwright.cli import main

if __name__ == "__main__":
    main()
