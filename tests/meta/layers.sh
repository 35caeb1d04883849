#!/bin/sh
# The law of layers, by the includes: domain knows only itself and the standard library, storage
# and reports know domain, apps know all, models know no Widgets; and only apps/cli/output.cpp writes
# to the terminal. Prints each breach.
set -eu
cd "$(dirname "$0")/../.."

breaches=0
forbid() { # where, pattern, why
    found=$(grep -rnE "#include *[<\"]($2)" $1 --include='*.h' --include='*.cpp' || true)
    [ -z "$found" ] && return
    printf '%s\n%s\n' "$3:" "$found"
    breaches=1
}

forbid domain 'Q[A-Z]|Qt|sqlite3|hpdf|nlohmann|sodium|storage/|reports/|apps/|tests/' \
    'domain includes more than itself and the standard library'
forbid domain 'fstream|filesystem|iostream|cstdlib|thread' 'domain touches the world'
forbid storage 'reports/|apps/|tests/|QWidget|QApplication|QGuiApplication' 'storage looks up'
forbid reports 'storage/|apps/|tests/|QWidget|QApplication|QSql' 'reports look up'
forbid apps/actions 'apps/cli|apps/desktop|QWidget|QApplication|QGuiApplication' \
    'actions look up'
forbid apps/cli 'apps/desktop|QWidget|QApplication|QGuiApplication' \
    'the command line knows the desktop'
forbid apps/desktop/models 'QWidget|QApplication|QMessageBox|QDialog|QFileDialog|QPainter|QColor' \
    'a model knows the screen'
forbid domain/route 'domain/(production|workshop|rules|design|drawing|materials)/' 'a route knows who uses it'
forbid domain/workshop 'domain/production/' 'the workshop knows the orders'

# Text for people is made safe in one place: nothing else of the command line writes to a stream.
writes=$(grep -rnE 'std::w?(cout|cerr|clog)|\<(v?f?printf|f?puts|f?putc|putchar|perror)\(|\<(stdout|stderr|STDOUT_FILENO|STDERR_FILENO|QTextStream|qDebug|qInfo|qWarning|qCritical)\>' \
    apps/cli --include='*.h' --include='*.cpp' | grep -v '^apps/cli/output\.cpp:' || true)
if [ -n "$writes" ]; then
    printf '%s\n%s\n' 'the command line writes past apps/cli/output.h:' "$writes"
    breaches=1
fi
exit $breaches
